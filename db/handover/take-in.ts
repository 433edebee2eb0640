/** A colleague's entries are judged, kept beside one's own, and the facts brought to what all entries together say. */
import { randomUUID } from 'node:crypto';
import type { z } from 'zod';
import type { Doing } from '../caseload.ts';
import { CaseloadError } from '../codes.ts';
import type { Db } from '../connection.ts';
import { guarded } from '../errors.ts';
import { factKinds, type Fact, type FactKind } from '../types/record.ts';
import { clientOf, homes, isKind } from '../records/kinds.ts';
import { bodyOf, newStep, setBody, type Step } from '../records/store.ts';
import { append, hashAt } from '../records/trail.ts';
import { digestOf, hashOf } from '../records/trail-hash.ts';
import { importPicture } from '../records/transfer.ts';
import { CARRIED_OUT, NOTE, type GrownLaptop, type HandedEntry } from './handed-entry.ts';
import type { Handed, TakenIn } from './handover-types.ts';
import { sumOf } from './handed-check.ts';
import { entriesOf, grownLaptops, isOwn, joinedWith, type ownNames } from './handed.ts';
import { mergeFacts, type Merged } from './merge-facts.ts';
import { isDecision } from './handed-entries.ts';

export type OwnNames = ReturnType<typeof ownNames>;

/** Refuses what does not fit itself: hashes, digests, facts that are none. @throws malformed-request */
export function judge(handed: Handed): void {
  const clients = new Set(handed.clientIds);
  const places = new Set<string>();
  const fits = (fit: boolean, what: string): void => {
    if (!fit) throw new CaseloadError('malformed-request', what);
  };
  for (const entry of handed.entries) {
    const place = `${entry.laptop} ${entry.seq}`;
    fits(!places.has(place), 'seq');
    places.add(place);
    fits(clients.has(entry.client_id), 'client_id');
    fits(entry.hash === hashOf(entry), 'hash');
    fits(entry.digest === digestOf(entry.salt, entry.before, entry.after), 'digest');
    if (entry.kind === NOTE) continue;
    fits(isKind(entry.kind), 'kind');
    const kind = entry.kind as FactKind;
    for (const body of [entry.before, entry.after]) {
      if (body === null) continue;
      const read = (factKinds[kind] as z.ZodType).safeParse(JSON.parse(body));
      fits(read.success && (read.data as Fact).id === entry.fact_id, kind);
      fits(clients.has(clientOf(kind, JSON.parse(body) as Fact)), 'clientId');
    }
    fits(entry.after !== null || entry.before !== null || entry.action === 'import', 'body');
  }
}

/** Entries that are not here yet. @throws handover-forked when a number stands for another entry here */
export function newEntries(db: Db, names: OwnNames, handed: Handed): HandedEntry[] {
  const kept = db.prepare('SELECT hash FROM handed_entry WHERE laptop = ? AND seq = ?').pluck();
  const valued = db.prepare('SELECT 1 FROM trail_value WHERE seq = ?').pluck();
  return handed.entries.filter((entry) => {
    const known = kept.get(entry.laptop, entry.seq) as string | undefined;
    const own = isOwn(names, entry.laptop) ? hashAt(db, entry.seq) : null;
    if ((known ?? entry.hash) !== entry.hash || (own ?? entry.hash) !== entry.hash) {
      throw new CaseloadError('handover-forked');
    }
    if (isOwn(names, entry.laptop) && own === null) throw new CaseloadError('handover-forked');
    // One's own entry whose values were erased here comes back by the colleague's copy.
    return known === undefined && !(own !== null && valued.get(entry.seq) !== undefined);
  });
}

/** What all entries of these clients say, those of `more` among them. */
export function mergedOf(db: Db, names: OwnNames, clientIds: readonly string[], more: Handed | null): Merged {
  const ids = joinedWith(db, clientIds);
  const all = new Map(entriesOf(db, names, ids).map((entry) => [entry.hash, entry]));
  for (const entry of more?.entries ?? []) all.set(entry.hash, entry);
  const grown = [...grownLaptops(db, names), ...(more?.grown ?? []).filter((each) => !isOwn(names, each.laptop))];
  return mergeFacts([...all.values()], grown);
}

/** A free code made of one that another client has here. */
export function freeCode(db: Db, code: string, clientId: string): string {
  const taken = db.prepare('SELECT 1 FROM client WHERE code = ? AND id <> ?').pluck();
  if (taken.get(code, clientId) === undefined) return code;
  for (let n = 2; ; n++) {
    const next = `${code.slice(0, 16)}-${n}`;
    if (taken.get(next, clientId) === undefined) return next;
  }
}

/**
 * One transaction: entries and pictures kept, a note of it in one's own trail, the facts brought to what all entries
 * say. Taking in the same again changes nothing.
 * @throws malformed-request, handover-forked, disk-full; nothing is changed then
 */
export function takeIn(
  db: Db,
  names: OwnNames,
  handed: Handed,
  bytesOf: (id: string) => Uint8Array | null,
  doing: Doing,
): TakenIn {
  judge(handed);
  return guarded(() =>
    db
      .transaction(() => {
        const fresh = newEntries(db, names, handed);
        if (fresh.length === 0) return { entries: 0, recoded: [] };
        const merged = mergedOf(db, names, handed.clientIds, handed);
        const step: Step = { ...newStep(doing, 'import'), reverses: CARRIED_OUT };
        for (const picture of handed.pictures) {
          const { clientId, ...listed } = picture;
          if (bodyOfBlob(db, picture.id)) continue;
          importPicture(db, clientId, listed, bytesOf(picture.id), doing, step.step);
        }
        keep(db, fresh, handed.grown, names, step.step);
        if (fresh.some(isDecision)) note(db, handed, fresh, step);
        return {
          entries: fresh.length,
          recoded: carryOut(db, merged, new Set(joinedWith(db, handed.clientIds)), step),
        };
      })
      .immediate(),
  );
}

const bodyOfBlob = (db: Db, id: string): boolean =>
  db.prepare('SELECT 1 FROM blob WHERE id = ?').pluck().get(id) !== undefined;

function keep(
  db: Db,
  fresh: readonly HandedEntry[],
  grown: readonly GrownLaptop[],
  names: OwnNames,
  taken: string,
): void {
  const insert = db.prepare(
    `INSERT INTO handed_entry (hash, laptop, seq, at, by, client_id, kind, fact_id, action, step, reverses, digest,
       prev_hash, salt, taken, before, after)
     VALUES (@hash, @laptop, @seq, @at, @by, @client_id, @kind, @fact_id, @action, @step, @reverses, @digest,
       @prev_hash, @salt, @taken, @before, @after)`,
  );
  for (const entry of fresh) insert.run({ ...entry, taken });
  const grew = db.prepare(
    'INSERT INTO handed_laptop (laptop, grew_from, up_to) VALUES (@laptop, @grew_from, @up_to) ON CONFLICT DO NOTHING',
  );
  for (const each of grown) if (!isOwn(names, each.laptop)) grew.run(each);
}

/** In each client's own trail: what was taken in, up to where, and the sum of it, so that it cannot be changed later. */
function note(db: Db, handed: Handed, fresh: readonly HandedEntry[], step: Step): void {
  const seen: Record<string, number> = {};
  for (const { laptop, seq } of handed.entries) seen[laptop] = Math.max(seen[laptop] ?? 0, seq);
  const after = JSON.stringify({ seen, entries: fresh.length, sum: sumOf(fresh.map(({ hash }) => hash)) });
  for (const clientId of handed.clientIds) {
    const change = { clientId, kind: NOTE, factId: randomUUID(), action: 'import' as const };
    append(db, { ...change, step: step.step, reverses: CARRIED_OUT, before: null, after }, step.doing);
  }
}

/** Brings the tables to `merged`. What is taken away goes first: two facts never answer one question. */
function carryOut(db: Db, merged: Merged, clients: ReadonlySet<string>, step: Step): TakenIn['recoded'] {
  for (const [id, { kind }] of merged.facts) {
    const here = bodyOf(db, kind, id);
    if (here !== null && !clients.has(clientOf(kind, JSON.parse(here) as Fact))) {
      throw new CaseloadError('malformed-request', kind);
    }
  }
  const move = db.prepare('UPDATE blob SET client_id = ? WHERE client_id = ?');
  for (const [from, into] of merged.joined) move.run(into, from);
  for (const [id, kind] of merged.gone) setBody(db, kind, id, null, step);
  const recoded: TakenIn['recoded'] = [];
  for (const [id, { kind, body }] of merged.facts) {
    if (kind !== 'client') continue;
    const fact = JSON.parse(body) as Fact<'client'>;
    const code = freeCode(db, fact.code, id);
    if (code === fact.code) setBody(db, kind, id, body, step);
    else {
      // A decision of this laptop: whoever gets the client next gets this code.
      setBody(db, kind, id, JSON.stringify({ ...fact, code, ...step.doing }), { doing: step.doing, step: step.step });
      recoded.push({ id, code });
    }
  }
  const late: [FactKind, string, string][] = [];
  for (const [id, { kind, body }] of merged.facts) {
    if (kind === 'client') continue;
    // An answer that moves to another question waits until the one that holds its place has moved.
    if (homes[kind].question.length > 0 && bodyOf(db, kind, id) !== null) late.push([kind, id, body]);
    else setBody(db, kind, id, body, step);
  }
  for (const [kind, id, body] of late) setBody(db, kind, id, body, step);
  return recoded;
}
