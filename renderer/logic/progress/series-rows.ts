import type { PracticeLog } from '../../../db/types/program.ts';
import { conditionDifferences, differencesSentence } from '../record/condition-changes.ts';
import type { Limits } from '../rules/limits.ts';
import { percentInterval, readersText } from '../texts/occasion-words.ts';
import type { Told } from '../texts/screens/en/screens-en.ts';
import type { Occasion } from '../record/occasions.ts';

/** One row of the table that says the same as the chart. */
export interface SeriesRow {
  day: string;
  what: string;
  right: number | null;
  words: number | null;
  percent: number | null;
  low: number | null;
  high: number | null;
  readers: string;
  fatigueBefore: number | null;
  fatigueAfter: number | null;
  pain: number | null;
  minutes: number | null;
  note: string;
}

/** Samples and practice days as rows, oldest first. */
export function rowsOf(
  occasions: readonly Occasion[],
  logs: readonly PracticeLog[],
  limits: Limits,
  told: Pick<Told, 'course' | 'conditions'>,
): SeriesRow[] {
  const words = told.course;
  const samples = occasions.map((o): SeriesRow => {
    const read = o.legibility;
    const before = occasions.find((other) => other.sample.baseline && !other.probe);
    const differs =
      before && before !== o ? conditionDifferences(before.sample, o.sample, limits, told.conditions) : [];
    return {
      day: o.day,
      what: o.probe ? words.probe : o.sample.baseline ? words.baseline : words.sample,
      right: read?.wordsRight ?? null,
      words: read?.words ?? null,
      percent: read ? read.accuracy * 100 : null,
      ...(read ? percentInterval(read.wordsRight, read.words) : { low: null, high: null }),
      readers: read ? readersText(read, words) : words.notRead,
      fatigueBefore: o.sample.fatigueBefore,
      fatigueAfter: o.sample.fatigueAfter,
      pain: o.sample.painAfter,
      minutes: o.sample.seconds === null ? null : o.sample.seconds / 60,
      note: differencesSentence(differs, told.conditions),
    };
  });
  const home = logs.map((log): SeriesRow => ({
    day: log.date,
    what: words.homePractice,
    right: null,
    words: null,
    percent: null,
    low: null,
    high: null,
    readers: '',
    fatigueBefore: log.fatigueBefore,
    fatigueAfter: log.fatigueAfter,
    pain: log.pain,
    minutes: log.minutes,
    note: log.note,
  }));
  return [...samples, ...home].sort((a, b) => (a.day < b.day ? -1 : a.day > b.day ? 1 : 0));
}
