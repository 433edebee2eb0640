/** Texts that somebody wrote, or met as a reader, of all clients. */
import type { Db } from '../connection.ts';

interface Row {
  text: string;
  codes: string;
  at: string;
}

/** Oldest first. Lines of trials stand for themselves, a row a trial. */
export function textsSince(db: Db, at: string): { text: string; codes: string[]; at: string }[] {
  const rows = db
    .prepare(
      `SELECT body ->> '$.task.text' AS text, body -> '$.task.textCodes' AS codes, taken_at AS at FROM sample
         WHERE taken_at >= @at AND body ->> '$.task.text' <> ''
       UNION ALL
       SELECT (SELECT group_concat(value ->> '$.text', char(10)) FROM json_each(trial.body, '$.lines')),
         (SELECT json_group_array(value ->> '$.frame') FROM json_each(trial.body, '$.lines')), at FROM trial
         WHERE at >= @at
       ORDER BY at`,
    )
    .all({ at }) as Row[];
  return rows.map(({ text, codes, at: on }) => ({ text, codes: JSON.parse(codes) as string[], at: on }));
}

/** A text that somebody has met: read from a sample, or known from taking it. */
interface TextMetRow {
  sampleId: string;
  how: 'read' | 'took';
  /** ISO 8601. */
  at: string;
  codes: string[];
  text: string;
}

/** Case of the initials does not matter. Oldest first. */
export function textsMetBy(db: Db, initials: string): TextMetRow[] {
  const rows = db
    .prepare(
      `SELECT sample.id AS sampleId, 'read' AS how, reading.body ->> '$.readerInitials' AS who,
         reading.body ->> '$.readAt' AS at, sample.body -> '$.task.textCodes' AS codes,
         sample.body ->> '$.task.text' AS text FROM reading JOIN sample ON sample.id = reading.sample_id
       UNION ALL
       SELECT id, 'took', by, taken_at, body -> '$.task.textCodes', body ->> '$.task.text' FROM sample
       ORDER BY at`,
    )
    .all() as (Omit<TextMetRow, 'codes'> & { who: string; codes: string })[];
  // SQLite knows upper and lower case of ASCII letters only.
  const same = (who: string): boolean => who.trim().toLowerCase() === initials.trim().toLowerCase();
  return rows
    .filter(({ who, text }) => text !== '' && same(who))
    .map(({ sampleId, how, at, codes, text }) => ({ sampleId, how, at, codes: JSON.parse(codes) as string[], text }));
}
