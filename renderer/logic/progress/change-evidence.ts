import { mean, median } from 'simple-statistics';
import { kendall, type KendallResult } from '../../statistics/kendall.ts';
import type { Limits } from '../rules/limits.ts';
import type { MinimalChange } from './minimal-change.ts';
import { nap, type NapResult } from '../../statistics/nap.ts';
import { newcombeDifference, type ProportionDifference } from '../../statistics/newcombe-difference.ts';
import { baselineCorrectedTau, type CorrectedTauResult } from '../../statistics/tau-u.ts';
import { theilSen, type TheilSenResult } from '../../statistics/theil-sen.ts';
import { bandExit, twoSdBand, type TwoSdBand } from './two-sd-band.ts';

/** All samples of one calendar day together. */
export interface DayPoint {
  /** YYYY-MM-DD. */
  day: string;
  right: number;
  words: number;
  /** 100 * right / words. */
  percent: number;
  baseline: boolean;
  samples: number;
}

export type Direction = 'up' | 'down';

/** Everything the numbers say about a series of days; percentage points of words read, weeks. */
export interface ChangeEvidence {
  days: DayPoint[];
  /** Days marked as baseline; the first day where none is marked, or all are. */
  baseline: DayPoint[];
  baselineMarked: boolean;
  later: DayPoint[];
  /** Mean of the baseline and of the last two later days. */
  before: number;
  now: number;
  /** Slope in points a week. */
  line: TheilSenResult | null;
  tau: KendallResult;
  band: TwoSdBand | null;
  /** The last two later days lie outside the band. */
  outside: Direction | null;
  firstAgainstLast: ProportionDifference | null;
  nap: NapResult | null;
  correctedTau: CorrectedTauResult | null;
  mdc: MinimalChange | null;
  beyondMdc: Direction | null;
  trend: Direction | null;
}

/**
 * Gathers the evidence of a series that has at least two days.
 * Without a marked baseline the first day serves as one.
 */
export function changeEvidence(
  days: readonly DayPoint[],
  mdc: MinimalChange | null,
  { baselineLeast }: Pick<Limits, 'baselineLeast'>,
): ChangeEvidence {
  const marked = days.filter((day) => day.baseline);
  const baseline = marked.length > 0 && marked.length < days.length ? marked : [days[0]!];
  const later = days.filter((day) => !baseline.includes(day));
  const percents = (points: readonly DayPoint[]) => points.map((point) => point.percent);
  const before = mean(percents(baseline));
  const now = mean(percents(later.slice(-2)));
  const weeks = days.map((day) => (Date.parse(day.day) - Date.parse(days[0]!.day)) / (7 * 86_400_000));
  const line = theilSen(weeks, percents(days));
  const band = twoSdBand(percents(baseline), { min: 0, max: 100, least: baselineLeast });
  const interval = line?.interval;
  const last = later.at(-1)!;
  const pooled = (points: readonly DayPoint[], pick: 'right' | 'words') => points.reduce((s, p) => s + p[pick], 0);
  const firstAgainstLast = newcombeDifference(
    last.right,
    last.words,
    pooled(baseline, 'right'),
    pooled(baseline, 'words'),
  );
  // A figure from a few pairs can come out smaller than counting so few words allows: then counting decides too.
  const apart = firstAgainstLast !== null && (firstAgainstLast.low > 0 || firstAgainstLast.high < 0);
  return {
    days: [...days],
    baseline,
    baselineMarked: marked.length > 0,
    later,
    before,
    now,
    line,
    tau: kendall(weeks, percents(days)),
    band,
    outside: band ? (bandExit(band, percents(later).slice(-2))?.direction ?? null) : null,
    firstAgainstLast,
    nap: nap(percents(baseline), percents(later)),
    correctedTau: baselineCorrectedTau(percents(baseline), percents(later)),
    mdc,
    beyondMdc:
      mdc && Math.abs(now - before) > mdc.mdc95 && (!mdc.provisional || apart) ? (now > before ? 'up' : 'down') : null,
    trend: interval && interval.low > 0 ? 'up' : interval && interval.high < 0 ? 'down' : null,
  };
}

/** Theil-Sen has a 95 % interval from five days on. */
const DAYS_FOR_A_TREND = 5;

/**
 * About how many more samples would tell, if the client goes on as now: until the trend's interval can leave zero
 * (its width shrinks with n to the power 1.5 for evenly spaced days), or until two days in a row leave the band.
 * @returns null when more of the same would hardly tell
 */
export function moreSamplesNeeded(
  evidence: ChangeEvidence,
  { moreSamplesMost }: Pick<Limits, 'moreSamplesMost'>,
): number | null {
  const n = evidence.days.length;
  const candidates: number[] = [];
  const { line, band, later } = evidence;
  const interval = line?.interval;
  if (!interval) candidates.push(DAYS_FOR_A_TREND - n);
  else if (line.slope !== 0) {
    const half = (interval.high - interval.low) / 2;
    candidates.push(Math.ceil(n * (half / Math.abs(line.slope)) ** (2 / 3)) - n);
  }
  if (band) {
    const last = later.at(-1)!.percent;
    const stuck = (last > band.mean && band.cannotDetect.up) || (last <= band.mean && band.cannotDetect.down);
    if (!stuck && (last > band.high || last < band.low)) candidates.push(1);
  }
  const least = Math.min(...candidates.map((c) => Math.max(1, c)));
  return Number.isFinite(least) && least <= moreSamplesMost ? least : null;
}

/** Adds up the samples of each calendar day, oldest first. */
export function byDay(
  points: readonly { day: string; right: number; exactRight?: number; words: number; baseline: boolean }[],
): DayPoint[] {
  const days = new Map<string, DayPoint>();
  const exact = new Map<string, number>();
  for (const { day, right, exactRight = right, words, baseline } of points) {
    const known = days.get(day) ?? { day, right: 0, words: 0, percent: 0, baseline: true, samples: 0 };
    known.right += right;
    known.words += words;
    known.samples += 1;
    known.baseline &&= baseline;
    exact.set(day, (exact.get(day) ?? 0) + exactRight);
    known.percent = (100 * exact.get(day)!) / known.words;
    days.set(day, known);
  }
  return [...days.values()].sort((a, b) => (a.day < b.day ? -1 : 1));
}

/** The usual number of words a day, so that change can be said in words. */
export const usualWords = (days: readonly DayPoint[]): number =>
  Math.round(median(days.map((day) => day.words / day.samples)));
