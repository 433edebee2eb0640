/** From readings to visits: who counts, since when, and which belong to one day under one set of conditions. */
import { millisecondsInDay } from 'date-fns/constants';
import type { ChangeLimits } from './change-limits.ts';
import { CONDITIONS, type ConditionName, type Count, type ReadSample } from './change-types.ts';
import { familyOf, READER_KINDS } from './families.ts';

/** One day under one set of conditions. */
export interface Visit {
  day: string;
  conditions: Readonly<Record<ConditionName, string>>;
  /** All of its samples are marked as baseline. */
  baseline: boolean;
  /** What each reader counted, all samples of the visit together. */
  readers: Map<string, Count>;
}

/** The series that is looked at. */
export interface Series {
  visits: Visit[];
  /** First day. */
  since: string;
  /** A long break lies before it. */
  afterBreak: boolean;
  /** Kind of reader that counts. */
  kind: string;
}

/** What a condition is where it was noted nowhere. */
const UNKNOWN: Readonly<Record<'cue' | 'dose' | 'hand' | 'surface' | 'view', string>> = {
  cue: 'none',
  dose: 'none',
  hand: 'same',
  surface: 'paper',
  view: 'true-size',
};

const kindOf = ({ kind }: ReadSample): string => kind || 'unfamiliar';
/** A day alone is read as midnight UTC (ECMA-262, Date.parse), so that days are whole numbers apart. */
const dayNumber = (day: string): number => Date.parse(day) / millisecondsInDay;

/** A count that can be read, of a task that is scored word by word. */
const counts = ({ right, words, task }: ReadSample): boolean =>
  words > 0 && right >= 0 && right <= words && familyOf(task) !== null;

/** The value noted most often; of equals the first by letter. */
function usual(values: readonly string[], otherwise: string): string {
  const times = new Map<string, number>();
  for (const value of values) times.set(value, (times.get(value) ?? 0) + 1);
  const sorted = [...times].sort(([a, n], [b, m]) => m - n || (a < b ? -1 : 1));
  return sorted[0]?.[0] ?? otherwise;
}

/**
 * The visits of the current series, oldest first: readings of the least familiar kind of reader, since the last break.
 * @param samples in any order, days as YYYY-MM-DD
 * @returns null when no reading counts
 */
export function currentSeries(samples: readonly ReadSample[], limits: Pick<ChangeLimits, 'breakDays'>): Series | null {
  const usable = samples.filter(counts);
  const kind = READER_KINDS.find((each) => usable.some((sample) => kindOf(sample) === each));
  if (kind === undefined) return null;
  const read = usable.filter((sample) => kindOf(sample) === kind);
  const days = [...new Set(read.map(({ day }) => day))].sort();
  const since = days.findLast((day, i) => i === 0 || dayNumber(day) - dayNumber(days[i - 1]!) > limits.breakDays)!;
  // Conditions are filled in from all that was noted, the time before a break included.
  const conditionsOf = fillConditions(read);
  const visits = new Map<string, Visit>();
  for (const sample of read) {
    if (sample.day < since) continue;
    const conditions = conditionsOf(sample);
    const key = JSON.stringify([sample.day, keyOf(conditions)]);
    const visit = visits.get(key) ?? { day: sample.day, conditions, baseline: true, readers: new Map() };
    visits.set(key, visit);
    visit.baseline &&= sample.baseline === true;
    const reader = sample.reader || '';
    const known = visit.readers.get(reader) ?? { right: 0, words: 0 };
    visit.readers.set(reader, { right: known.right + sample.right, words: known.words + sample.words });
  }
  const sorted = [...visits.values()].sort((a, b) => (a.day < b.day ? -1 : a.day > b.day ? 1 : 0));
  return { visits: sorted, since, afterBreak: since !== days[0], kind };
}

function fillConditions(read: readonly ReadSample[]): (sample: ReadSample) => Visit['conditions'] {
  const noted = (name: 'cue' | 'dose' | 'hand'): string =>
    usual(
      read.flatMap((sample) => sample[name] || []),
      UNKNOWN[name],
    );
  const fill = { cue: noted('cue'), dose: noted('dose'), hand: noted('hand') };
  return (sample) => ({
    task: familyOf(sample.task)!,
    cue: sample.cue || fill.cue,
    dose: sample.dose || fill.dose,
    hand: sample.hand || fill.hand,
    surface: sample.surface || UNKNOWN.surface,
    view: sample.view || UNKNOWN.view,
  });
}

/** The conditions in a fixed order: equal arrays mean comparable visits. */
export const keyOf = (conditions: Visit['conditions']): string[] => CONDITIONS.map((name) => conditions[name]);
