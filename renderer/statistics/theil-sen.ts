import { median } from 'simple-statistics';
import { discordantDistribution, kendallVariance, tieSizes } from './kendall.ts';
import { normalQuantile } from './normal-quantile.ts';
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

/**
 * Theil-Sen line: the median of all slopes between two points, its interval from the ranks of Kendall's S.
 * Points with the same x give no slope among themselves.
 * @returns null when fewer than two different x values exist
 * @throws RangeError when the lengths differ
 * Source: Sen 1968, JASA 63:1379-1389 (the printed interval of its example is misprinted: 26/7 to 35/8 is right).
 */
export function theilSen(x: readonly number[], y: readonly number[], confidence = 0.95): TheilSenResult | null {
  if (x.length !== y.length) throw new RangeError('both series need the same length');
  const slopes: number[] = [];
  for (let i = 0; i < x.length; i++) {
    for (let j = i + 1; j < x.length; j++) {
      const run = x[j]! - x[i]!;
      if (run !== 0) slopes.push((y[j]! - y[i]!) / run);
    }
  }
  if (slopes.length === 0) return null;
  slopes.sort((a, b) => a - b);
  const slope = median(slopes);
  const intercept = median(x.map((value, i) => y[i]! - slope * value));
  const cut = cutOff(x, y, slopes.length, confidence);
  if (!cut) return { slope, intercept, interval: null, confidence: null, n: x.length };
  const interval = { low: slopes[cut.below]!, high: slopes[slopes.length - 1 - cut.below]! };
  return { slope, intercept, interval, confidence: cut.confidence, n: x.length };
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
