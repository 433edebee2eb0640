import { daysBetween, daysLater } from '../../texts/days.ts';
import type { Decimals } from '../../texts/decimals.ts';
import type { Told } from '../../texts/screens/en/screens-en.ts';
import type { PracticeLog } from '../../../../db/types/program.ts';

/** What was typed for one practice day; null or '' = not said. */
export type PracticeDay = Pick<
  PracticeLog,
  'date' | 'minutes' | 'lines' | 'fatigueBefore' | 'fatigueAfter' | 'pain' | 'breaks' | 'paper' | 'grip' | 'note'
>;

export const emptyDay = (date: string): PracticeDay => ({
  date,
  minutes: null,
  lines: null,
  fatigueBefore: null,
  fatigueAfter: null,
  pain: null,
  breaks: null,
  paper: '',
  grip: '',
  note: '',
});

/** Why a day cannot be kept as typed, in a sentence; '' when it can. */
export function dayProblem(day: PracticeDay, today: string, words: Told['ladder']): string {
  if (!/^\d{4}-\d{2}-\d{2}$/.test(day.date)) return words.giveDay;
  if (day.date > today) return words.future;
  const said = [day.minutes, day.lines, day.fatigueBefore, day.fatigueAfter, day.pain, day.breaks].some(
    (v) => v !== null,
  );
  return said || day.note.trim() ? '' : words.nothingFilled;
}

/** The day before, for entering a week of paper in one go; dates as YYYY-MM-DD. */
export const dayAfter = (date: string): string => daysLater(date, 1);

/** Logs of the seven days up to the newest one, in the order given. */
export function lastWeek(logs: readonly PracticeLog[]): PracticeLog[] {
  const newest = logs.reduce((day, log) => (log.date > day ? log.date : day), '');
  return logs.filter((log) => daysBetween(log.date, newest) <= 6);
}

export interface PracticeSummary {
  days: number;
  minutes: number;
  /** Practice days a week over the span from the first to the last day, one decimal; null with one day. */
  daysPerWeek: number | null;
  /** Mean rise of fatigue where both were said; null when never. */
  fatigueRise: number | null;
}

/** What the logs of a span say together. */
export function practiceSummary(logs: readonly PracticeLog[]): PracticeSummary {
  const dates = [...new Set(logs.map((log) => log.date))].sort();
  const rises = logs.flatMap((log) =>
    log.fatigueBefore !== null && log.fatigueAfter !== null ? [log.fatigueAfter - log.fatigueBefore] : [],
  );
  const span = dates.length > 1 ? daysBetween(dates[0]!, dates.at(-1)!) + 1 : 0;
  return {
    days: dates.length,
    minutes: logs.reduce((sum, log) => sum + (log.minutes ?? 0), 0),
    daysPerWeek: span >= 2 ? Math.min(7, Math.round((dates.length / span) * 70) / 10) : null,
    fatigueRise: rises.length ? rises.reduce((sum, rise) => sum + rise, 0) / rises.length : null,
  };
}

/** The summary as a sentence. */
export function practiceSentence(logs: readonly PracticeLog[], words: Told['ladder'], decimals: Decimals): string {
  const { days, minutes, daysPerWeek, fatigueRise } = practiceSummary(logs);
  if (days === 0) return words.noPractice;
  const tired =
    fatigueRise === null
      ? ''
      : Math.abs(fatigueRise) < 0.5
        ? words.fatigueSame
        : words.fatigueBy(fatigueRise > 0, decimals(Math.abs(fatigueRise), 1, 0));
  return words.practice(days, Math.round(minutes), daysPerWeek === null ? null : decimals(daysPerWeek, 1, 0), tired);
}
