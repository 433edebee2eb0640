import type { SeriesRow } from './series-rows.ts';
import { toldEnglish } from '../texts/screens/told-english.ts';
import { toCsv } from '../texts/csv-cells.ts';

/** Cells of a row in the order of the columns; percents and minutes with one decimal. */
export function progressCells(row: SeriesRow): (string | number | null)[] {
  const one = (value: number | null) => (value === null ? null : Math.round(value * 10) / 10);
  return [
    row.day,
    row.what,
    row.right,
    row.words,
    one(row.percent),
    one(row.low),
    one(row.high),
    row.readers,
    row.fatigueBefore,
    row.fatigueAfter,
    row.pain,
    one(row.minutes),
    row.note,
  ];
}

/** The whole table as CSV, in English as every export; dates as ISO 8601, no client name in it. */
export const progressCsv = (rows: readonly SeriesRow[]): string =>
  toCsv(toldEnglish.course.columns, rows.map(progressCells));
