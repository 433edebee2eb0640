/** Whether the entries of colleagues are those that were taken in. */
import { createHash } from 'node:crypto';
import type { Db } from '../connection.ts';
import { digestOf, hashOf } from '../records/trail-hash.ts';
import { CARRIED_OUT, NOTE, type HandedEntry } from './handed-entry.ts';

/** One sum over entries, whatever their order. */
export const sumOf = (hashes: readonly string[]): string =>
  createHash('sha256')
    .update([...hashes].sort().join('\n'))
    .digest('hex');

/** Number of the note in one's own trail whose entries do not fit; null when all do. */
export function firstHandedBreak(db: Db): number | null {
  const notes = db
    .prepare(
      `SELECT min(seq) AS seq, step, max(after) AS after,
         max(EXISTS (SELECT 1 FROM trail e WHERE e.client_id = t.client_id AND e.action = 'erase' AND e.seq > t.seq)) AS erased
       FROM trail t LEFT JOIN trail_value USING (seq)
       WHERE kind = '${NOTE}' AND action = 'import' AND reverses = '${CARRIED_OUT}' GROUP BY step ORDER BY seq`,
    )
    .all() as { seq: number; step: string; after: string | null; erased: number }[];
  const hashes = db.prepare('SELECT hash FROM handed_entry WHERE taken = ?').pluck();
  for (const { seq, step, after, erased } of notes) {
    // What was erased afterwards took its entries along.
    if (erased === 1 || after === null) continue;
    if ((JSON.parse(after) as { sum?: unknown }).sum !== sumOf(hashes.all(step) as string[])) return seq;
  }
  const rows = db.prepare('SELECT * FROM handed_entry');
  for (const row of rows.iterate() as IterableIterator<HandedEntry & { taken: string }>) {
    const fits = row.hash === hashOf(row) && row.digest === digestOf(row.salt, row.before, row.after);
    if (!fits) return notes.find((note) => note.step === row.taken)?.seq ?? notes[0]?.seq ?? 1;
  }
  return null;
}
