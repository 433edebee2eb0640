/** What is due over the whole caseload: the facts of the clients, some at a time, and the list that follows from them. */
import { ask } from '../../../electron/contract/ask.ts';
import type { CaseloadEntry } from '../../../electron/contract/caseload.ts';
import { WORK_AT_ONCE, type WorkFacts } from '../../../electron/contract/caseload.ts';
import { type WorkItem, workLimits, worklist } from '../../logic/caseload/worklist.ts';
import type { App } from '../frame/app.svelte.ts';

/** One row: what waits, with the name of its client. */
export type NamedWork = WorkItem & { id: string; name: string };

const idsFrom = (clients: readonly CaseloadEntry[], at: number): string[] =>
  clients.slice(at, at + WORK_AT_ONCE).map(({ id }) => id);

export class Worklist {
  readonly #app: App;
  #names = $state.raw<ReadonlyMap<string, string>>(new Map());
  #facts = $state.raw<readonly WorkFacts[]>([]);
  /** Share of the clients that was looked at, 0 to 1. */
  looked = $state(0);
  readonly items: readonly NamedWork[] = $derived.by(() => {
    const seen = new Map<string, number>();
    return worklist(this.#facts, this.#app.status.today, workLimits(this.#app.rules.thresholds)).map((item) => {
      // A client may have several goals due.
      const key = `${item.clientId}-${item.kind}`;
      const before = seen.get(key) ?? 0;
      seen.set(key, before + 1);
      return { ...item, id: `${key}-${before}`, name: this.#names.get(item.clientId) ?? item.code };
    });
  });

  constructor(app: App) {
    this.#app = app;
  }

  /** Looks at every client who is not archived, those seen last first; the list follows in parts. */
  async look(clients: readonly CaseloadEntry[]): Promise<void> {
    const mine = clients
      .filter((one) => !one.archivedOn)
      .sort((a, b) => (b.lastVisit ?? '').localeCompare(a.lastVisit ?? ''));
    this.#names = new Map(mine.map((one) => [one.id, one.name]));
    const found: WorkFacts[] = [];
    for (let at = 0; at < mine.length; at += WORK_AT_ONCE) {
      found.push(...(await ask('caseload.work', { clientIds: idsFrom(mine, at), soon: true })));
      // Lists of thousands are not drawn again for each hundred.
      if (at === 0 || at + WORK_AT_ONCE >= mine.length) this.#facts = [...found];
      this.looked = Math.min(1, (at + WORK_AT_ONCE) / mine.length);
    }
    this.looked = 1;
    // Now that every record was read, the clinic's repeat pairs are known: a flag may rest on them.
    const settled: WorkFacts[] = [];
    for (let at = 0; at < mine.length; at += WORK_AT_ONCE)
      settled.push(...(await ask('caseload.work', { clientIds: idsFrom(mine, at) })));
    if (JSON.stringify(settled) !== JSON.stringify(found)) this.#facts = settled;
  }
}
