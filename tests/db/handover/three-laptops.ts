/** Three laptops in a model: each writes, removes, undoes nothing, and hands its entries to another now and then. */
import { createHash } from 'node:crypto';
import { NOTE, type HandedEntry } from '../../../db/handover/handed-entry.ts';
import { mergeFacts, type Merged } from '../../../db/handover/merge-facts.ts';
import { isDecision } from '../../../db/handover/handed-entries.ts';
import type { FactKind } from '../../../db/types/record.ts';

const uuid = (text: string): string => {
  const hex = createHash('sha256').update(text).digest('hex');
  return `${hex.slice(0, 8)}-${hex.slice(8, 12)}-4${hex.slice(13, 16)}-8${hex.slice(17, 20)}-${hex.slice(20, 32)}`;
};
const CLIENT = uuid('client');

type Fact = Record<string, unknown> & { id: string };

export class Laptop {
  readonly id: string;
  readonly entries = new Map<string, HandedEntry>();
  readonly facts = new Map<string, { kind: FactKind; body: string }>();
  /** Minutes that this laptop's clock goes wrong. */
  readonly skew: number;
  #seq = 0;

  constructor(name: string, skew: number) {
    this.id = uuid(name);
    this.skew = skew;
  }

  #append(
    kind: string,
    factId: string,
    action: HandedEntry['action'],
    before: string | null,
    after: string | null,
    at: string,
  ) {
    this.#seq += 1 + (this.#seq % 3);
    const plain = { laptop: this.id, seq: this.#seq, at, by: 'X', client_id: CLIENT, kind, fact_id: factId, action };
    const hash = createHash('sha256')
      .update(JSON.stringify([plain, before, after]))
      .digest('hex');
    const rest = { step: 's', reverses: null, digest: hash, prev_hash: '' as const, salt: '' };
    this.entries.set(hash, { ...plain, ...rest, hash, before, after });
  }

  put(kind: FactKind, fact: Fact, minute: number): void {
    const at = new Date(Date.UTC(2026, 2, 4, 9, minute + this.skew)).toISOString();
    const body = JSON.stringify({ ...fact, at, by: 'X' });
    const before = this.facts.get(fact.id)?.body ?? null;
    if (before === body) return;
    this.#append(kind, fact.id, before === null ? 'create' : 'update', before, body, at);
    this.facts.set(fact.id, { kind, body });
  }

  remove(id: string, minute: number): void {
    const fact = this.facts.get(id);
    if (!fact) return;
    for (const [child, { body }] of [...this.facts]) {
      if ((JSON.parse(body) as Fact)['visitId'] === id) this.remove(child, minute);
    }
    const at = new Date(Date.UTC(2026, 2, 4, 9, minute + this.skew)).toISOString();
    this.#append(fact.kind, id, 'remove', fact.body, null, at);
    this.facts.delete(id);
  }

  merged(): Merged {
    return mergeFacts([...this.entries.values()], []);
  }

  /** Takes in what another handed over at some moment; answers whether anything changed. */
  takeIn(handed: readonly HandedEntry[]): boolean {
    const fresh = handed.filter((entry) => !this.entries.has(entry.hash));
    if (fresh.length === 0) return false;
    for (const entry of fresh) this.entries.set(entry.hash, entry);
    if (fresh.some(isDecision)) {
      const seen: Record<string, number> = {};
      for (const { laptop, seq } of handed) seen[laptop] = Math.max(seen[laptop] ?? 0, seq);
      const note = uuid(`${this.id} ${this.#seq}`);
      this.#append(NOTE, note, 'import', null, JSON.stringify({ seen }), '2026-03-04T09:00:00.000Z');
    }
    const merged = this.merged();
    this.facts.clear();
    for (const [id, fact] of merged.facts) this.facts.set(id, fact);
    return true;
  }

  handOver(): HandedEntry[] {
    return [...this.entries.values()];
  }
}

/** One thing that happens on a laptop, told by numbers. */
export interface Act {
  laptop: number;
  what: number;
  thing: number;
  value: number;
}

const VISITS = ['v1', 'v2'].map(uuid);

/** Does one act; `minute` is the true time. Files handed over are kept in `files`, so that old ones turn up again. */
export function act(
  laptops: readonly Laptop[],
  files: HandedEntry[][],
  { laptop, what, thing, value }: Act,
  minute: number,
): void {
  const self = laptops[laptop] as Laptop;
  const there = VISITS.filter((id) => self.facts.has(id));
  const visitId = there[thing % Math.max(1, there.length)];
  const of = { clientId: CLIENT, ...(visitId === undefined ? {} : { visitId }) };
  if (what === 0) self.put('client', { id: CLIENT, name: `name ${value}` }, minute);
  else if (what === 1) {
    const id = VISITS[thing % 2] as string;
    if (self.facts.has(CLIENT)) self.put('visit', { id, clientId: CLIENT, told: `told ${value}` }, minute);
  } else if (what === 2 && visitId !== undefined) {
    self.put('sample', { id: uuid(`s${thing} ${visitId}`), ...of, text: `text ${value}` }, minute);
  } else if (what === 3 && visitId !== undefined) {
    // The same question under an id of this laptop's own, unless it is answered here already.
    const known = [...self.facts].find(([, { kind, body }]) => {
      const fact = JSON.parse(body) as Fact;
      return kind === 'intakeAnswer' && fact['visitId'] === visitId && fact['item'] === `i${thing % 2}`;
    });
    const id = known?.[0] ?? uuid(`a${minute} ${self.id}`);
    self.put('intakeAnswer', { id, ...of, item: `i${thing % 2}`, side: 'right', grade: value }, minute);
  } else if (what === 4 && visitId !== undefined) {
    const id = uuid(`p${thing % 2} ${visitId}`);
    if (!self.facts.get(id)?.body.includes('"approved"')) {
      self.put('program', { id, ...of, status: value % 3 === 0 ? 'approved' : 'draft', words: `w ${value}` }, minute);
    }
  } else if (what === 5 && visitId !== undefined) {
    const hangs = [...self.facts.values()].some(
      ({ body }) => body.includes('"approved"') && (JSON.parse(body) as Fact)['visitId'] === visitId,
    );
    if (!hangs) self.remove(visitId, minute);
  } else if (what === 6) {
    const some = [...self.facts].filter(([, { kind }]) => kind === 'sample' || kind === 'intakeAnswer');
    const one = some[thing % Math.max(1, some.length)];
    if (one) self.remove(one[0], minute);
  } else if (what === 7) files.push(self.handOver());
  else if (what === 8) {
    const other = laptops[(laptop + 1 + (thing % 2)) % laptops.length] as Laptop;
    const file = other.handOver();
    files.push(file);
    self.takeIn(file);
  } else if (what === 9 && files.length > 0) self.takeIn(files[value % files.length] as HandedEntry[]);
}

/** Everybody hands over to everybody until nothing is new, in an order of one's own. */
export function exchangeAll(laptops: readonly Laptop[], order: readonly number[]): void {
  for (let round = 0; round < 6; round++) {
    let changed = false;
    for (const pair of order) {
      const from = laptops[Math.floor(pair / 2) % 3] as Laptop;
      const to = laptops[(Math.floor(pair / 2) + 1 + (pair % 2)) % 3] as Laptop;
      changed = to.takeIn(from.handOver()) || changed;
    }
    if (!changed) return;
  }
}
