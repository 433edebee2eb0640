/** Two records of one client become one. */
import type { Doing } from '../caseload.ts';
import { CaseloadError } from '../codes.ts';
import type { Db } from '../connection.ts';
import { guarded } from '../errors.ts';
import type { Fact } from '../types/record.ts';
import { allKinds, homes } from './kinds.ts';
import { bodyOf, newStep, setBody } from './store.ts';

/**
 * Moves everything of `from` to `into` and removes `from`. Fields of the client itself stay those of `into`.
 * One step: undo at `into` brings `from` back. @throws not-found, malformed-request
 */
export function mergeClients(db: Db, from: string, into: string, doing: Doing): void {
  if (from === into) throw new CaseloadError('malformed-request', 'from');
  const step = newStep(doing);
  guarded(() =>
    db
      .transaction(() => {
        for (const id of [from, into]) {
          if (bodyOf(db, 'client', id) === null) throw new CaseloadError('not-found', 'client');
        }
        for (const kind of allKinds) {
          if (kind === 'client') continue;
          const rows = db.prepare(`SELECT id, body FROM ${homes[kind].table} WHERE client_id = ?`).all(from);
          for (const { id, body } of rows as { id: string; body: string }[]) {
            const fact = { ...(JSON.parse(body) as Fact<'visit'>), clientId: into, ...doing };
            setBody(db, kind, id, JSON.stringify(fact), step);
          }
        }
        db.prepare('UPDATE blob SET client_id = ? WHERE client_id = ?').run(into, from);
        setBody(db, 'client', from, null, step);
      })
      .immediate(),
  );
}
