/** The entries of a client, one's own and those of colleagues, out of the file. */
import { randomUUID } from 'node:crypto';
import { existsSync, readFileSync } from 'node:fs';
import { z } from 'zod';
import type { Doing } from '../caseload.ts';
import type { Db } from '../connection.ts';
import { laptopFile, writeDurably } from '../files.ts';
import { readSetting, writeSetting } from '../records/settings.ts';
import { hashAt, lastSeq } from '../records/trail.ts';
import { allKinds } from '../records/kinds.ts';
import { CARRIED_OUT, NOTE, type GrownLaptop, type HandedEntry } from './handed-entry.ts';

/** The names this file has gone by: each stands for the entries after `from`. */
const OwnNames = z.array(z.object({ id: z.uuid(), from: z.number().int().min(0), anchor: z.string() }));
type OwnNames = z.infer<typeof OwnNames>;

/**
 * The names of this laptop, newest last. A new one is taken where the file beside the caseload does not name the last:
 * after a restore, so that what is written from here on is never taken for what was written before.
 */
export function ownNames(db: Db, folder: string, doing: Doing): OwnNames {
  const read = OwnNames.safeParse(readSetting(db, 'laptop'));
  // Another trail (a salvaged file): its numbers mean other entries.
  const kept = read.success && read.data.every((each) => hashAt(db, each.from) === each.anchor) ? read.data : [];
  const here = existsSync(laptopFile(folder)) ? readFileSync(laptopFile(folder), 'utf8').trim() : '';
  if (kept.length > 0 && kept.at(-1)?.id === here) return kept;
  const from = kept.length === 0 ? 0 : lastSeq(db);
  const names = [...kept, { id: randomUUID(), from, anchor: hashAt(db, from) ?? '' }];
  writeDurably(laptopFile(folder), `${names.at(-1)?.id}\n`);
  writeSetting(db, 'laptop', names, doing);
  return names;
}

const nameAt = (names: OwnNames, seq: number): string =>
  (names.findLast((each) => each.from < seq) ?? (names[0] as OwnNames[number])).id;

export const isOwn = (names: OwnNames, laptop: string): boolean => names.some((each) => each.id === laptop);

export function grownLaptops(db: Db, names: OwnNames): GrownLaptop[] {
  const own = names.slice(1).map((each, i) => ({
    laptop: each.id,
    grew_from: (names[i] as OwnNames[number]).id,
    up_to: each.from,
  }));
  const others = db
    .prepare('SELECT laptop, grew_from, up_to FROM handed_laptop ORDER BY laptop')
    .all() as GrownLaptop[];
  return [...own, ...others.filter((each) => !isOwn(names, each.laptop))];
}

/** What no facts are in the trail: their ids name no fact of a client. */
const noFacts = `('blob', 'export', 'setting')`;

/**
 * Other clients that facts of one client ever belonged to. The joins are written in the order in which their indexes
 * lead: from the client's own entries to those of the same facts, however many others there are.
 */
const others = `WITH own AS (
    SELECT fact_id FROM trail WHERE client_id = @id AND kind NOT IN ${noFacts}
    UNION SELECT fact_id FROM handed_entry WHERE client_id = @id)
  SELECT client_id FROM own CROSS JOIN trail USING (fact_id) WHERE client_id <> @id AND kind NOT IN ${noFacts}
  UNION SELECT client_id FROM own CROSS JOIN handed_entry USING (fact_id) WHERE client_id <> @id`;

/** The clients and all that facts of theirs ever belonged to: records of one person that were joined. */
export function joinedWith(db: Db, clientIds: readonly string[]): string[] {
  const found = new Set(clientIds);
  const next = db.prepare(others).pluck();
  const queue = [...clientIds];
  for (let id = queue.pop(); id !== undefined; id = queue.pop()) {
    for (const other of next.all({ id }) as string[]) {
      if (found.has(other)) continue;
      found.add(other);
      queue.push(other);
    }
  }
  return [...found];
}

const kinds = [...allKinds, NOTE].map((kind) => `'${kind}'`).join(', ');

/** Every decision about these clients, and the notes of what was taken in; ordered by hash. */
export function entriesOf(db: Db, names: OwnNames, clientIds: readonly string[]): HandedEntry[] {
  const own = db.prepare(
    `SELECT hash, seq, at, by, client_id, kind, fact_id, action, step, reverses, digest, prev_hash, salt, before, after
     FROM trail JOIN trail_value USING (seq)
     WHERE client_id = ? AND kind IN (${kinds}) AND action <> 'erase'
       AND (kind = '${NOTE}' OR reverses IS NOT '${CARRIED_OUT}') ORDER BY seq`,
  );
  const handed = db.prepare(
    `SELECT hash, laptop, seq, at, by, client_id, kind, fact_id, action, step, reverses, digest, prev_hash, salt, before,
       after FROM handed_entry WHERE client_id = ?`,
  );
  const all = new Map<string, HandedEntry>();
  for (const id of clientIds) {
    for (const row of own.all(id) as HandedEntry[]) all.set(row.hash, { ...row, laptop: nameAt(names, row.seq) });
    for (const row of handed.all(id) as HandedEntry[]) if (!all.has(row.hash)) all.set(row.hash, row);
  }
  return [...all.values()].sort((a, b) => (a.hash < b.hash ? -1 : 1));
}
