import type { SeriesRow } from './series-rows.ts';
import { toCsv } from '../texts/csv-cells.ts';

/** Column heads of the table under the chart, with units. */
export const PROGRESS_COLUMNS = [
  'Date',
  'What',
  'Words read',
  'Words written',
  'Percent',
  'Low (95 %)',
  'High (95 %)',
  'Reader',
  'Fatigue before (0-10)',
  'Fatigue after (0-10)',
  'Pain after (0-10)',
  'Minutes',
  'Note',
] as const;

/** Cells of a row in the order of PROGRESS_COLUMNS; percents and minutes with one decimal. */
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

/** The whole table as CSV; dates as ISO 8601, no client name in it. */
export const progressCsv = (rows: readonly SeriesRow[]): string => toCsv(PROGRESS_COLUMNS, rows.map(progressCells));
