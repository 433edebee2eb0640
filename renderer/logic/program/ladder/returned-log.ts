/** A log that came back as a picture: what is marked on it becomes days, once a person has looked at what is doubtful. */
import type { PracticeLog } from '../../../../db/types/program.ts';
import { type LogField, logValues } from '../../../measure/index.ts';
import { daysLater } from '../../texts/days.ts';
import { emptyDay, type PracticeDay } from './practice-log.ts';

export interface ReadCell {
  row: number;
  field: LogField;
  value: number | null;
  doubt: boolean;
  picture: string | null;
}

export interface ReturnedDay {
  date: string;
  cells: ReadCell[];
  /** Why it is not kept with the others; '' where it is. */
  state: 'new' | 'logged' | 'future';
}

/** Fields in the order of the columns. */
export const logFields = ['done', 'minutes', 'before', 'after', 'pain', 'felt'] as const satisfies readonly LogField[];

export const choicesOf = (field: LogField, few: boolean): number[] => logValues(field, few);

/** Days on which anything is marked, oldest first. */
export function daysOfLog(
  cells: readonly ReadCell[],
  firstDay: string,
  today: string,
  logged: readonly string[],
): ReturnedDay[] {
  const rows = [...new Set(cells.map(({ row }) => row))].sort((a, b) => a - b);
  return rows.flatMap((row) => {
    const ofRow = cells.filter((cell) => cell.row === row);
    if (ofRow.every(({ value, doubt }) => value === null && !doubt)) return [];
    const date = daysLater(firstDay, row);
    const state = date > today ? 'future' : logged.includes(date) ? 'logged' : 'new';
    return [{ date, cells: ofRow, state }];
  });
}

/** What was settled for each field of a day; undefined = a person has not looked yet. */
export type Settled = Partial<Record<LogField, number | null>>;

/** What stands before anybody has looked: sure marks, and nothing for the doubtful ones. */
export const settledAtFirst = (day: ReturnedDay): Settled =>
  Object.fromEntries(day.cells.filter(({ doubt }) => !doubt).map(({ field, value }) => [field, value]));

export const isSettled = (settled: Settled): boolean => logFields.every((field) => settled[field] !== undefined);

const felt = ['easy', 'fair', 'hard'] as const;

/** A day as it is kept. A day that is marked as done without minutes keeps none; one with nothing but that is a day of practice. */
export function dayOfSettled(date: string, settled: Settled): PracticeDay & Pick<PracticeLog, 'felt'> {
  return {
    ...emptyDay(date),
    minutes: settled.minutes ?? null,
    fatigueBefore: settled.before ?? null,
    fatigueAfter: settled.after ?? null,
    pain: settled.pain ?? null,
    felt: settled.felt === null || settled.felt === undefined ? null : felt[settled.felt]!,
  };
}
