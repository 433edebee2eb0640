/**
 * The client whose record is open. Views read `record` and write facts through `save`; everything else is derived.
 *
 *   open.record          the whole record (replaced, never mutated)
 *   open.visit           the visit that new observations belong to
 *   await open.save('intakeAnswer', { id: open.newId(), clientId: open.clientId, visitId: open.visitId, … })
 *   await open.remove('practiceLog', id)     open.undo()     open.redo()
 */
import { ask } from '../../../electron/contract/ask.ts';
import type { Unstamped } from '../../../electron/contract/request.ts';
import type { Input, RequestName } from '../../../electron/contract/index.ts';
import type { ClientRecord, Fact, FactKind } from '../../../db/types/record.ts';
import type { Visit, VisitKind } from '../../../db/types/visit.ts';
import type { RulesInUse } from '../../../db/types/rules-in-use.ts';
import { coSignOf, waitsForCoSign } from '../../logic/record/co-sign.ts';
import type { SaveHost } from './save-host.ts';
import { factOf, saveRequest, withFact, withFactsBack, withoutFact, type SavedKind } from './saved-facts.ts';

/** Facts that a repeat pair is made of, and the program that ends the baseline. */
const makesPairs: ReadonlySet<FactKind> = new Set(['visit', 'sample', 'reading', 'program']);

export class OpenRecord {
  record = $state.raw<ClientRecord>() as ClientRecord;
  visitId = $state('');
  readonly app: SaveHost;
  /** Of each fact with an edit under way: as it is stored (null = not yet), and the edits shown, newest last. */
  #unsaved = new Map<string, { stored: Fact | null; shown: Fact[] }>();

  constructor(app: SaveHost, record: ClientRecord) {
    this.app = app;
    this.record = record;
    const last = [...record.visits].sort((a, b) => a.date.localeCompare(b.date)).at(-1);
    this.visitId = last?.id ?? '';
    this.#askPairs();
  }

  /** True while an edit is under way or waits to be saved. */
  get unsaved(): boolean {
    return this.#unsaved.size > 0;
  }
  get clientId(): string {
    return this.record.client.id;
  }
  get visit(): Visit | undefined {
    return this.record.visits.find((v) => v.id === this.visitId);
  }
  /** Repeat samples of the whole clinic, as numbers that say nothing of whose; null until the shell has answered. */
  #pairs = $state.raw<RulesInUse['repeatPairs'] | null>(null);
  /** The rule table in use, with what the clinic knows of unchanged hands: pure functions take it as an argument. */
  readonly rules: RulesInUse = $derived.by(() =>
    this.#pairs ? { ...this.app.rules, repeatPairs: this.#pairs } : this.app.rules,
  );
  /** ISO date of today by the shell's clock. */
  get today(): string {
    return this.app.status.today;
  }

  /** Asked again after whatever may make a pair of this client, or take one away. */
  #askPairs(): void {
    ask('progress.repeatPairs', {}).then(({ pairs }) => {
      if (JSON.stringify(pairs) !== JSON.stringify(this.#pairs)) this.#pairs = pairs;
    }, this.app.complain);
  }

  newId(): string {
    return crypto.randomUUID();
  }
  now(): string {
    return new Date().toISOString();
  }

  /** Begins a visit today, to which new observations belong from now on. */
  startVisit = async (): Promise<void> => {
    const kind: VisitKind = this.record.visits.length === 0 ? 'first' : 'treatment';
    const own = { minutes: null, nextVisit: '', told: '', skilled: '', response: '', taughtBack: '', plan: '' };
    const id = this.newId();
    await this.save('visit', { id, clientId: this.clientId, date: this.today, kind, ...own });
    this.visitId = id;
  };

  /**
   * Stores a fact; the screen shows it at once, a failed save waits and is tried again.
   * @throws Refusal when the entry itself is refused: then that fact is shown as it was, and nothing else changes
   */
  async save<K extends SavedKind>(kind: K, fact: Unstamped<K>): Promise<Fact<K>> {
    const key = `${kind}/${fact.id}`;
    const shown = { ...fact, at: this.now(), by: this.app.status.initials || '–' } as unknown as Fact<K>;
    const unsaved = this.#unsaved.get(key) ?? { stored: factOf(this.record, kind, fact.id), shown: [] };
    this.#unsaved.set(key, unsaved);
    unsaved.shown.push(shown);
    this.record = withFact(this.record, kind, shown);
    try {
      const saved = (await this.app.saving.run(key, () =>
        ask(saveRequest[kind] as RequestName, bare(fact) as unknown as Input<RequestName>),
      )) as unknown as Fact<K>;
      unsaved.stored = saved;
      this.#showInstead(kind, shown, saved);
      if (makesPairs.has(kind)) this.#askPairs();
      if (this.app.status.assistant) this.#waitsNow(saved);
      return saved;
    } catch (error) {
      this.#showInstead(kind, shown, unsaved.shown.findLast((each) => each !== shown) ?? unsaved.stored);
      this.app.complain(error);
      throw error;
    } finally {
      unsaved.shown = unsaved.shown.filter((each) => each !== shown);
      if (unsaved.shown.length === 0) this.#unsaved.delete(key);
    }
  }

  /** What an assistant adds makes its visit wait for a co-signature, as it is stored. */
  #waitsNow(saved: Fact): void {
    const visit = 'visitId' in saved ? this.record.visits.find(({ id }) => id === saved.visitId) : undefined;
    if (!visit || waitsForCoSign(visit)) return;
    const judged = coSignOf(visit, visit, { ...saved, assistant: true });
    const waits = { ...visit, ...('coSign' in judged && { coSign: judged.coSign }) };
    this.record = withFact(this.record, 'visit', waits);
  }

  /** Puts a fact in the place of an edit, where that is still shown: a newer edit, an undo or a removal goes first. */
  #showInstead(kind: SavedKind, shown: Fact, instead: Fact | null): void {
    if (factOf(this.record, kind, shown.id) !== shown) return;
    if (instead) this.record = withFact(this.record, kind, instead);
    else if (kind !== 'client') this.record = withoutFact(this.record, kind, shown.id);
  }

  /** A request that answers with one fact of this client (adding a page, measuring, approving, issuing). */
  async request<N extends RequestName>(kind: FactKind, name: N, input: Input<N>): Promise<Fact> {
    const fact = (await ask(name, input)) as unknown as Fact;
    this.record = withFact(this.record, kind, fact);
    if (makesPairs.has(kind)) this.#askPairs();
    return fact;
  }

  /** Shows a fact that a request stored beside the one it was asked for. */
  take<K extends FactKind>(kind: K, fact: Fact<K>): void {
    this.record = withFact(this.record, kind, fact);
  }

  /** Takes a fact out; with `words` ("Reading of NB taken out.") the window offers Undo for a while. */
  async remove(kind: Exclude<FactKind, 'client'>, id: string, words = ''): Promise<void> {
    const before = this.record;
    this.record = withoutFact(this.record, kind, id);
    try {
      await this.app.saving.run(`${kind}/${id}`, () => ask('fact.remove', { kind, id }));
      if (makesPairs.has(kind)) this.#askPairs();
      if (words) this.app.tookOut(words, () => void this.undo());
    } catch (error) {
      this.record = withFactsBack(this.record, before, kind, id);
      this.app.complain(error);
      throw error;
    }
  }

  undo = () => this.#travel('client.undo');
  redo = () => this.#travel('client.redo');

  async #travel(name: 'client.undo' | 'client.redo'): Promise<void> {
    try {
      this.record = await this.app.saving.run(name, () => ask(name, { clientId: this.clientId }));
      if (!this.visit) this.visitId = this.record.visits.at(-1)?.id ?? '';
      this.#askPairs();
    } catch (error) {
      this.app.complain(error);
    }
  }
}

/** Without the stamps that the shell sets: a view may pass a stored fact back with a field changed. */
function bare<T extends object>(fact: T): T {
  const { at: _at, by: _by, ...rest } = fact as T & { at?: unknown; by?: unknown };
  return $state.snapshot(rest) as T;
}
