/** What left the program, noted in the trail of each client whose data it holds. */
import { randomUUID } from 'node:crypto';
import type { Doing } from '../caseload.ts';
import type { Db } from '../connection.ts';
import { guarded } from '../errors.ts';
import { newStep } from './store.ts';
import { append } from './trail.ts';

/** @param what the kind of file in a few words, no client's data */
export function noteExport(db: Db, clientIds: readonly string[], what: string, doing: Doing): void {
  guarded(() =>
    db
      .transaction(() => {
        const { step } = newStep(doing);
        const after = JSON.stringify({ what });
        for (const clientId of clientIds) {
          const change = { clientId, kind: 'export', factId: randomUUID(), action: 'set' as const, step };
          append(db, { ...change, before: null, after }, doing);
        }
      })
      .immediate(),
  );
}
