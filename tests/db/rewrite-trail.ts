/** What somebody with the key and bad intent can do: an old entry changed, every hash after it computed anew. */
import { createHash } from 'node:crypto';
import { openFile } from '../../db/connection.ts';
import { caseloadFile } from '../../db/files.ts';

const HASHED = ['seq', 'at', 'by', 'client_id', 'kind', 'fact_id', 'action', 'step', 'reverses', 'digest'];

/** Gives the first entry other initials; the triggers that forbid it are gone meanwhile and there again afterwards. */
export function rewriteTrail(folder: string, identity: Uint8Array): void {
  const db = openFile(caseloadFile(folder), identity);
  const guards = "SELECT name, sql FROM sqlite_schema WHERE type = 'trigger' AND tbl_name LIKE 'trail%'";
  const triggers = db.prepare(guards).all() as { name: string; sql: string }[];
  for (const { name } of triggers) db.exec(`DROP TRIGGER ${name}`);
  const rows = db.prepare('SELECT * FROM trail ORDER BY seq').all() as Record<string, unknown>[];
  let previous = '';
  for (const row of rows) {
    if (row['seq'] === 1) row['by'] = 'XX';
    const text = JSON.stringify([previous, ...HASHED.map((part) => row[part])]);
    const hash = createHash('sha256').update(text).digest('hex');
    const set = 'UPDATE trail SET by = ?, prev_hash = ?, hash = ? WHERE seq = ?';
    db.prepare(set).run(row['by'], previous, hash, row['seq']);
    previous = hash;
  }
  db.prepare('UPDATE trail_head SET hash = ?').run(previous);
  for (const { sql } of triggers) db.exec(sql);
  db.close();
}
