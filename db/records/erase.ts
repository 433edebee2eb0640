/** Erasing a client on request: nothing of the person is left in the file, and the trail's chain still holds. */
import type { Doing } from '../caseload.ts';
import { CaseloadError } from '../codes.ts';
import type { Db } from '../connection.ts';
import { guarded } from '../errors.ts';
import { allKinds, homes, pictureIds } from './kinds.ts';
import { newStep } from './store.ts';
import { append } from './trail.ts';

/** Records that were merged into this one and are the same person: their old values lie in the trail too. */
function mergedInto(db: Db, clientId: string): string[] {
  const found = new Set<string>();
  const next = db
    .prepare(
      `SELECT DISTINCT other.client_id FROM trail own JOIN trail other USING (step)
       WHERE own.client_id = ? AND other.kind = 'client' AND other.client_id <> own.client_id
         AND NOT EXISTS (SELECT 1 FROM client WHERE id = other.client_id)`,
    )
    .pluck();
  const queue = [clientId];
  for (let id = queue.pop(); id !== undefined; id = queue.pop()) {
    for (const other of next.all(id) as string[]) {
      if (!found.has(other) && other !== clientId) {
        found.add(other);
        queue.push(other);
      }
    }
  }
  return [...found];
}

/** True when anything of the client can still be read in this file, be it in the trail only. */
export function holdsClient(db: Db, clientId: string): boolean {
  const trail = 'SELECT 1 FROM trail JOIN trail_value USING (seq) WHERE client_id = @id';
  const handed = 'SELECT 1 FROM handed_entry WHERE client_id = @id';
  const any = `SELECT EXISTS (SELECT 1 FROM client WHERE id = @id) OR EXISTS (${trail}) OR EXISTS (${handed})`;
  return db.prepare(any).pluck().get({ id: clientId }) === 1;
}

/** The client's pictures, but none that another client's facts show (after an undone merge). */
function eraseBlobs(db: Db, clientId: string): void {
  db.prepare(
    `DELETE FROM blob WHERE (client_id = @id OR id IN (${pictureIds('client_id = @id')}))
     AND id NOT IN (${pictureIds('client_id <> @id')})`,
  ).run({ id: clientId });
}

/**
 * Removes the clients' facts, pictures and the values in the trail; entries keep only the random ids, times,
 * initials and kinds. secure_delete overwrites what was there, VACUUM leaves no free page, and emptying the
 * write-ahead log removes the last copies. Backups are not touched.
 * @throws not-found, disk-full (nothing is erased then)
 */
export function eraseClients(db: Db, clientIds: readonly string[], doing: Doing): void {
  guarded(() => {
    db.transaction(() => {
      for (const id of clientIds) {
        if (!db.prepare('SELECT 1 FROM client WHERE id = ?').get(id)) throw new CaseloadError('not-found', 'client');
      }
      const { step } = newStep(doing);
      for (const id of new Set(clientIds.flatMap((each) => [each, ...mergedInto(db, each)]))) {
        eraseBlobs(db, id);
        for (const kind of [...allKinds].reverse()) {
          const column = kind === 'client' ? 'id' : 'client_id';
          db.prepare(`DELETE FROM ${homes[kind].table} WHERE ${column} = ?`).run(id);
        }
        db.prepare('DELETE FROM trail_value WHERE seq IN (SELECT seq FROM trail WHERE client_id = ?)').run(id);
        db.prepare('DELETE FROM handed_entry WHERE client_id = ?').run(id);
        const none = { before: null, after: null };
        append(db, { clientId: id, kind: 'client', factId: id, action: 'erase', step, ...none }, doing);
      }
    }).immediate();
    db.exec('VACUUM');
    db.pragma('wal_checkpoint(TRUNCATE)');
  });
}
