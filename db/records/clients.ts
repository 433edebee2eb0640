/** The list of clients and finding one. */
import type { ClientRow } from '../caseload-rows.ts';
import type { Db } from '../connection.ts';
import type { Fact } from '../types/record.ts';
import { fold, read } from './store.ts';

interface Row extends Omit<ClientRow, 'diagnoses'> {
  diagnoses: string;
}

const select = `
  SELECT c.id, c.code, c.name, c.body ->> '$.birthYear' AS birthYear,
    (SELECT coalesce(group_concat(value ->> '$.text', '; '), '') FROM json_each(c.body, '$.diagnoses')) AS diagnoses,
    (SELECT max(date) FROM visit WHERE client_id = c.id) AS lastVisit,
    (SELECT count(*) FROM visit WHERE client_id = c.id) AS visits,
    c.archived_on AS archivedOn
  FROM client c`;

const order = 'ORDER BY c.archived_on IS NOT NULL, c.name COLLATE NOCASE, c.code';

/** All clients by name, archived ones last. */
export const listClients = (db: Db): ClientRow[] => db.prepare(`${select} ${order}`).all() as Row[];

/** Clients whose name or code contains every word typed. Case and accents do not matter; nothing typed lists all. */
export function searchClients(db: Db, typed: string): ClientRow[] {
  const words = fold(typed).split(/\s+/).filter(Boolean).slice(0, 8);
  if (words.length === 0) return listClients(db);
  const where = words.map(() => 'instr(c.folded, ?) > 0').join(' AND ');
  return db.prepare(`${select} WHERE ${where} ${order}`).all(...words) as Row[];
}

/** Codes are matched as printed, then without regard to case. */
export function clientByCode(db: Db, code: string): Fact<'client'> | null {
  const row = db
    .prepare('SELECT body FROM client WHERE code = @code COLLATE NOCASE ORDER BY code = @code DESC LIMIT 1')
    .get({ code }) as { body: string } | undefined;
  return row ? read('client', row.body) : null;
}
