import { daysBetween, daysLater } from '../../texts/days.ts';
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
export function dayProblem(day: PracticeDay, today: string): string {
  if (!/^\d{4}-\d{2}-\d{2}$/.test(day.date)) return 'Give the day of practice. Nothing was saved.';
  if (day.date > today) return 'This day lies in the future. Nothing was saved; check the date.';
  const said = [day.minutes, day.lines, day.fatigueBefore, day.fatigueAfter, day.pain, day.breaks].some(
    (v) => v !== null,
  );
  return said || day.note.trim() ? '' : 'Nothing is filled in yet: minutes alone are enough.';
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
export function practiceSentence(logs: readonly PracticeLog[]): string {
  const { days, minutes, daysPerWeek, fatigueRise } = practiceSummary(logs);
  if (days === 0) return 'No practice has been entered yet.';
  const often = daysPerWeek === null ? '' : `, about ${daysPerWeek} days a week`;
  const tired =
    fatigueRise === null
      ? ''
      : Math.abs(fatigueRise) < 0.5
        ? '; fatigue hardly changed'
        : `; fatigue ${fatigueRise > 0 ? 'rose' : 'fell'} by about ${Math.abs(Math.round(fatigueRise * 10) / 10)}`;
  return `${days} ${days === 1 ? 'day' : 'days'} of practice, ${Math.round(minutes)} minutes${often}${tired}.`;
}
