import {
  byDay,
  changeEvidence,
  moreSamplesNeeded,
  usualWords,
  type ChangeEvidence,
  type DayPoint,
  type Direction,
} from './change-evidence.ts';
import { conditionDifferences, differencesSentence, type Circumstances } from '../record/condition-changes.ts';
import type { Limits } from '../rules/limits.ts';
import type { MinimalChange } from './minimal-change.ts';
import { capital, countWord, plural, spanWords } from '../texts/count-words.ts';
import { wilson } from '../../statistics/wilson.ts';

/** One sample that was read. */
export interface ChangePoint {
  /** Calendar day, YYYY-MM-DD. */
  day: string;
  right: number;
  /** The mean of several readers before rounding: percents rest on it, as in the chart. */
  exactRight?: number;
  words: number;
  readers: number;
  /** Whether two readers agree; null with one reader. */
  agree: boolean | null;
  baseline: boolean;
  circumstances: Circumstances | null;
}

/** What can be said about change, and why. */
export interface ChangeAnswer {
  verdict: 'nothing' | 'cannot-tell' | 'up' | 'down' | 'steady';
  /** Sentences a therapist can defend, in words. */
  sentence: string;
  /** Differences of conditions between the first and the last sample, '' when none. */
  conditions: string;
  /** About how many more samples would tell; null when told already, or when more would hardly help. */
  moreSamples: number | null;
  /** The numbers behind it, for those who ask. */
  evidence: ChangeEvidence | null;
}

/**
 * Says whether legibility has really changed, in words.
 * @param points samples that were read, in any order; days are pooled, a long break starts a new series
 * @param mdc minimal detectable change in percentage points, null when not known
 * @param limits what counts as a break, as steady, as enough (`limitsOf`)
 */
export function describeChange(
  points: readonly ChangePoint[],
  mdc: MinimalChange | null,
  limits: Limits,
): ChangeAnswer {
  const usable = points.filter((p) => p.words > 0 && p.right >= 0 && p.right <= p.words && Date.parse(p.day));
  const all = byDay(usable);
  if (all.length === 0) {
    const sentence = points.length
      ? 'The readings hold no words that can be counted, so there is nothing to compare.'
      : 'No sample has been read yet. As soon as somebody who does not know the text has read one, it shows here.';
    return { verdict: 'nothing', sentence, conditions: '', moreSamples: null, evidence: null };
  }
  const { days, gapDays } = sinceLastBreak(all, limits.breakDays);
  const inSeries = usable.filter((p) => p.day >= days[0]!.day).sort((a, b) => (a.day < b.day ? -1 : 1));
  const conditions = conditionsNote(inSeries, limits);
  if (days.length === 1) {
    return {
      verdict: 'cannot-tell',
      sentence: oneDay(days[0]!, all, gapDays),
      conditions,
      moreSamples: 2,
      evidence: null,
    };
  }
  const evidence = changeEvidence(days, mdc, limits);
  const told = verdictOf(evidence, limits.steadyPoints);
  const moreSamples = told === 'cannot-tell' ? moreSamplesNeeded(evidence, limits) : null;
  const after = gapDays ? ` Counted since the break of ${spanWords(gapDays)}.` : '';
  const edge = edgeSentence(days);
  if (edge) return { verdict: 'cannot-tell', sentence: edge + after, conditions, moreSamples: null, evidence };
  const sentence = sentenceFor(told, evidence, inSeries, moreSamples) + after;
  return { verdict: told, sentence, conditions, moreSamples, evidence };
}

function verdictOf(evidence: ChangeEvidence, steadyPoints: number): 'up' | 'down' | 'steady' | 'cannot-tell' {
  const { beyondMdc, outside, trend, line, now, before } = evidence;
  const signs = [beyondMdc, outside, trend].filter((sign): sign is Direction => sign !== null);
  const level: Direction = now >= before ? 'up' : 'down';
  // Every sign must point where the latest days really lie: an early rise that was lost again is no rise.
  if (signs.length > 0 && signs.every((sign) => sign === level) && now !== before) return level;
  const interval = line?.interval;
  if (signs.length === 0 && interval) {
    const weeks = weeksBetween(evidence.days[0]!, evidence.days.at(-1)!);
    const most = Math.max(Math.abs(interval.low), Math.abs(interval.high)) * weeks;
    if (most <= (evidence.mdc?.mdc95 ?? steadyPoints)) return 'steady';
  }
  return 'cannot-tell';
}

function sentenceFor(
  verdict: 'up' | 'down' | 'steady' | 'cannot-tell',
  evidence: ChangeEvidence,
  points: readonly ChangePoint[],
  more: number | null,
): string {
  const { days } = evidence;
  const words = usualWords(days);
  const visits = capital(plural(days.length, 'visit', 'visits', true));
  if (verdict === 'steady') {
    return `${visits}: no clear change; about ${inWords(evidence.now, words)} of ${words} words. ${readersClause(points)}.`;
  }
  if (verdict === 'cannot-tell') {
    const from = inWords(evidence.before, words);
    const to = inWords(evidence.now, words);
    const seen = from === to ? `about ${to} words in ${words}` : `from about ${from} to about ${to} words in ${words}`;
    const how = more
      ? `About ${plural(more, 'more sample', 'more samples', true)} under the same conditions would tell, if it goes on like this.`
      : 'More samples of this kind would hardly tell: use a longer text, or two samples in one visit.';
    return `${visits}: ${seen}. Cannot tell yet whether this is more than day-to-day change${whyNot(evidence)}. ${how}`;
  }
  return `${visits}: ${amount(verdict, evidence, words)}; ${largerThan(evidence, words)}; ${readersClause(points)}.`;
}

function amount(direction: Direction, evidence: ChangeEvidence, words: number): string {
  const { line, days, before, now } = evidence;
  const rate = line ? Math.abs(line.slope) : 0;
  const agrees = line !== null && Math.sign(line.slope) === (direction === 'up' ? 1 : -1);
  if (days.length >= 3 && agrees && weeksBetween(days[0]!, days.at(-1)!) >= 1) {
    const aWeek = (rate * words) / 100;
    if (aWeek >= 0.75) return `${direction} by about ${plural(Math.round(aWeek), 'word')} in ${words} a week`;
    const aMonth = aWeek * 4.35;
    if (aMonth >= 0.75) return `${direction} by about ${plural(Math.round(aMonth), 'word')} in ${words} a month`;
  }
  return `${direction} from about ${inWords(before, words)} to about ${inWords(now, words)} words in ${words}`;
}

function largerThan(evidence: ChangeEvidence, words: number): string {
  const { mdc, beyondMdc, outside, trend } = evidence;
  const parts: string[] = [];
  if (beyondMdc && mdc) {
    const size = Math.max(1, Math.round((mdc.mdc95 * words) / 100));
    const basis = mdc.provisional ? `, provisional from ${plural(mdc.pairs, 'repeat pair')}` : '';
    parts.push(`more than two samples of an unchanged hand differ (${plural(size, 'word')}${basis})`);
  }
  if (outside) parts.push('larger than the day-to-day spread of the baseline');
  if (parts.length === 0 && trend) parts.push('the same direction through the whole series');
  if (evidence.band === null && !beyondMdc) {
    parts.push(`the day-to-day spread is not known (${baselineWords(evidence)})`);
  }
  return parts.join('; ');
}

const baselineWords = ({ baseline, baselineMarked }: ChangeEvidence): string =>
  baselineMarked
    ? plural(baseline.length, 'baseline visit', 'baseline visits', true)
    : 'no baseline is marked, the first visit serves as one';

function whyNot(evidence: ChangeEvidence): string {
  const { band, now } = evidence;
  if (band && ((now >= band.mean && band.cannotDetect.up) || (now < band.mean && band.cannotDetect.down))) {
    return ': the baseline varies so much that its band reaches the end of the scale and cannot detect it';
  }
  if (!band && !evidence.mdc) {
    return `: the day-to-day spread is not known (${baselineWords(evidence)})`;
  }
  return '';
}

function readersClause(points: readonly ChangePoint[]): string {
  const two = points.filter((p) => p.readers >= 2);
  if (two.length === 0) return 'read by one reader each time';
  if (two.some((p) => p.agree === false)) return 'the readers differ';
  if (two.length < points.length) return 'two readers agree where two have read';
  return `${countWord(Math.min(...two.map((p) => p.readers)))} readers agree`;
}

function edgeSentence(days: readonly DayPoint[]): string {
  const visits = `at all ${countWord(days.length)} visits`;
  if (days.every((day) => day.right === day.words)) {
    return `Every word could be read ${visits}. This measure can show no further gain: choose a harder task, less help or more speed.`;
  }
  if (days.every((day) => day.right === 0)) {
    return `No word could be read ${visits}. Single letters will show change sooner than words: count letters, or shorten the task.`;
  }
  return '';
}

function oneDay(day: DayPoint, all: readonly DayPoint[], gapDays: number): string {
  const { low, high } = wilson(day.right, day.words);
  const range = `${Math.round(low * day.words)} to ${Math.round(high * day.words)} would be no surprise on the same day`;
  const seen = `${day.right} of ${day.words} words could be read (${range})`;
  const twice = day.samples > 1 ? `, from ${plural(day.samples, 'sample', 'samples', true)}` : '';
  if (gapDays) {
    const earlier = all.at(-2)!;
    return `First visit after a break of ${spanWords(gapDays)}: ${seen}${twice}; before the break ${earlier.right} of ${earlier.words}. What happened in between is not known: take this as a new baseline, with two more samples.`;
  }
  return `One visit: ${seen}${twice}. One visit cannot show change: two more samples under the same conditions make a baseline.`;
}

function sinceLastBreak(all: readonly DayPoint[], breakDays: number): { days: DayPoint[]; gapDays: number } {
  for (let i = all.length - 1; i > 0; i--) {
    const gapDays = weeksBetween(all[i - 1]!, all[i]!) * 7;
    if (gapDays > breakDays) return { days: all.slice(i), gapDays };
  }
  return { days: [...all], gapDays: 0 };
}

function conditionsNote(points: readonly ChangePoint[], limits: Limits): string {
  const known = points.flatMap((p) => p.circumstances ?? []);
  const [first, last] = [known[0], known.at(-1)];
  return first && last && first !== last ? differencesSentence(conditionDifferences(first, last, limits)) : '';
}

const inWords = (percent: number, words: number): number => Math.round((percent * words) / 100);
const weeksBetween = (a: DayPoint, b: DayPoint): number => (Date.parse(b.day) - Date.parse(a.day)) / (7 * 86_400_000);
