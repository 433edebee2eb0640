/** Texts that somebody wrote lately, of all clients. */
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
