/** One client's whole record, except the pictures' bytes: one statement a kind. */
import { CaseloadError } from '../codes.ts';
import type { Db } from '../connection.ts';
import type { ClientRecord, Fact } from '../types/record.ts';
import { allKinds, homes } from './kinds.ts';
import { getFact, read } from './store.ts';

/** @throws not-found; damaged when a stored fact does not fit its schema */
export function readClientRecord(db: Db, clientId: string): ClientRecord {
  const client = getFact(db, 'client', clientId);
  if (client === null) throw new CaseloadError('not-found', 'client');
  const record: Record<string, Fact | Fact[]> = { client };
  for (const kind of allKinds) {
    const { table, list, order } = homes[kind];
    if (list === null) continue;
    const bodies = db.prepare(`SELECT body FROM ${table} WHERE client_id = ? ORDER BY ${order}`).pluck();
    record[list] = (bodies.all(clientId) as string[]).map((body) => read(kind, body));
  }
  return record as unknown as ClientRecord;
}
