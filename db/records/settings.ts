/** The clinic's settings and its own rule changes: named JSON values; who uses one validates it. */
import type { Doing } from '../caseload.ts';
import { CaseloadError } from '../codes.ts';
import type { Db } from '../connection.ts';
import { guarded } from '../errors.ts';
import { newStep } from './store.ts';
import { append } from './trail.ts';

const textOf = (db: Db, name: string): string | null =>
  (db.prepare('SELECT value FROM setting WHERE name = ?').pluck().get(name) as string | undefined) ?? null;

export function readSetting(db: Db, name: string): unknown {
  const text = textOf(db, name);
  return text === null ? null : JSON.parse(text);
}

/** Sets a value, or removes it with null. */
export function writeSetting(db: Db, name: string, value: unknown, doing: Doing): void {
  if (!/^[a-z][a-z0-9.-]{0,59}$/i.test(name)) throw new CaseloadError('malformed-request', name);
  const after = value === null || value === undefined ? null : JSON.stringify(value);
  guarded(() =>
    db
      .transaction(() => {
        const before = textOf(db, name);
        if (before === after) return;
        if (after === null) db.prepare('DELETE FROM setting WHERE name = ?').run(name);
        else {
          db.prepare(
            `INSERT INTO setting (name, value, at, by) VALUES (@name, @after, @at, @by)
             ON CONFLICT (name) DO UPDATE SET value = @after, at = @at, by = @by`,
          ).run({ name, after, ...doing });
        }
        const { step } = newStep(doing);
        append(db, { clientId: null, kind: 'setting', factId: name, action: 'set', step, before, after }, doing);
      })
      .immediate(),
  );
}
