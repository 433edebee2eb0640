/** Words of forms that are no fact yet, by the place of the form: kept over a lock, a close and a kill; no trail. */
import type { Doing } from '../caseload.ts';
import type { UnkeptWords } from '../caseload-rows.ts';
import { CaseloadError } from '../codes.ts';
import type { Db } from '../connection.ts';
import { guarded } from '../errors.ts';
import { getFact } from './store.ts';

/** Keeps or, with no fields, drops the words of a form. @throws not-found, disk-full */
export function keepWords(db: Db, { place, clientId, fields }: UnkeptWords, doing: Doing): void {
  if (clientId !== null && getFact(db, 'client', clientId) === null) throw new CaseloadError('not-found', 'client');
  guarded(() => {
    if (Object.keys(fields).length === 0) db.prepare('DELETE FROM unkept_words WHERE place = ?').run(place);
    else
      db.prepare(
        `INSERT INTO unkept_words (place, client_id, fields, at) VALUES (?, ?, ?, ?)
         ON CONFLICT (place) DO UPDATE SET client_id = excluded.client_id, fields = excluded.fields, at = excluded.at`,
      ).run(place, clientId, JSON.stringify(fields), doing.at);
  });
}

/** What was typed there and not kept; empty when nothing was. */
export function wordsKept(db: Db, place: string): Record<string, string> {
  const text = db.prepare('SELECT fields FROM unkept_words WHERE place = ?').pluck().get(place) as string | undefined;
  return text === undefined ? {} : (JSON.parse(text) as Record<string, string>);
}
