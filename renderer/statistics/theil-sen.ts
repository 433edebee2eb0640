import { discordantDistribution, kendallVariance, tieSizes } from './kendall.ts';
import type { Fit } from './least-squares.ts';
import { normalQuantile } from './normal-quantile.ts';
import { median } from './order-statistics.ts';
import type { Interval } from './wilson.ts';

/** A straight line through points that a few bad days cannot tilt. */
export interface TheilSenResult {
  /** Unit of y per unit of x. */
  slope: number;
  /** Median of y - slope * x. */
  intercept: number;
  /** Interval of the slope; null when there are too few points for the confidence asked for. */
  interval: Interval | null;
  /** The confidence that the interval really has; at least the one asked for when exact. */
  confidence: number | null;
  n: number;
}

/** Beyond this many points the normal approximation of Kendall's S serves. */
const MOST_POINTS_EXACT = 30;

/** Slopes of all pairs of points that differ in x. */
function pairSlopes(xs: ArrayLike<number>, ys: ArrayLike<number>): Float64Array {
  const slopes: number[] = [];
  for (let i = 0; i < xs.length; i += 1)
    for (let j = i + 1; j < xs.length; j += 1) {
      const step = xs[j]! - xs[i]!;
      if (step !== 0) slopes.push((ys[j]! - ys[i]!) / step);
    }
  return Float64Array.from(slopes);
}

/** The line alone: median of pair slopes, median of y - slope x. Null below two different x. */
export function theilSenLine(xs: ArrayLike<number>, ys: ArrayLike<number>): Fit | null {
  return lineThrough(pairSlopes(xs, ys), xs, ys);
}

function lineThrough(slopes: ArrayLike<number>, xs: ArrayLike<number>, ys: ArrayLike<number>): Fit | null {
  const slope = median(slopes);
  if (slope === null) return null;
  const intercept = median(new Float64Array(xs).map((x, i) => ys[i]! - slope * x))!;
  return { slope, intercept };
}

/**
 * Theil-Sen line: the median of all slopes between two points, its interval from the ranks of Kendall's S.
 * Points with the same x give no slope among themselves.
 * @returns null when fewer than two different x values exist
 * @throws RangeError when the lengths differ
 * Source: Sen 1968, JASA 63:1379-1389 (the printed interval of its example is misprinted: 26/7 to 35/8 is right).
 */
export function theilSen(x: readonly number[], y: readonly number[], confidence = 0.95): TheilSenResult | null {
  if (x.length !== y.length) throw new RangeError('both series need the same length');
  const slopes = pairSlopes(x, y).sort();
  const line = lineThrough(slopes, x, y);
  if (!line) return null;
  const cut = cutOff(x, y, slopes.length, confidence);
  if (!cut) return { ...line, interval: null, confidence: null, n: x.length };
  const interval = { low: slopes[cut.below]!, high: slopes[slopes.length - 1 - cut.below]! };
  return { ...line, interval, confidence: cut.confidence, n: x.length };
}

/** How many slopes to leave out at each end. */
function cutOff(
  x: readonly number[],
  y: readonly number[],
  slopes: number,
  confidence: number,
): { below: number; confidence: number } | null {
  const n = x.length;
  const tail = (1 - confidence) / 2;
  const ties = tieSizes(x);
  if (ties.length === 0 && n <= MOST_POINTS_EXACT) {
    // d: the most discordant pairs that chance shows in at most `tail` of cases. Sen takes one slope fewer off each
    // end than the ranks alone would allow, so the interval is on the safe side.
    const share = discordantDistribution(n);
    let d = -1;
    for (let sum = share[0]!; sum <= tail + 1e-12; sum += share[d + 1] ?? 1) d++;
    if (d < 0) return null;
    const below = Math.max(0, d - 1);
    const outside = share.slice(0, below + 1).reduce((sum, p) => sum + p, 0);
    return { below, confidence: 1 - 2 * outside };
  }
  const spread = normalQuantile(confidence) * Math.sqrt(kendallVariance(n, ties, tieSizes(y)));
  const below = Math.floor((slopes - spread) / 2) - 1;
  return below < 0 ? null : { below, confidence };
}
