/** How much a file holds. */
import type { Counts } from '../caseload-rows.ts';
import type { Db } from '../connection.ts';
import { allKinds, homes } from './kinds.ts';

const countOf = (db: Db, table: string): number => db.prepare(`SELECT count(*) FROM ${table}`).pluck().get() as number;

/** Rows of each kind of fact, and of blob, setting and trail. */
export function countRows(db: Db): Counts {
  const counts: Counts = {};
  const there = new Set(db.prepare("SELECT name FROM sqlite_schema WHERE type = 'table'").pluck().all());
  for (const kind of allKinds) {
    // A backup of an earlier version has no table for what came later.
    if (there.has(homes[kind].table)) counts[kind] = countOf(db, homes[kind].table);
  }
  for (const table of ['blob', 'setting', 'trail']) counts[table] = countOf(db, table);
  return counts;
}

/** ISO date of the latest visit of anybody; null when there is none. */
export const lastVisitDate = (db: Db): string | null =>
  db.prepare('SELECT max(date) FROM visit').pluck().get() as string | null;
