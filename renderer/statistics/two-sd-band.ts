import { mean, sampleStandardDeviation } from 'simple-statistics';
import type { Interval } from './wilson.ts';

/** The client's own day-to-day spread before the program. Unit: that of the measure. */
export interface TwoSdBand extends Interval {
  mean: number;
  sd: number;
  n: number;
  /** The band's edge lies beyond what the measure can reach, so change in that direction cannot be detected. */
  cannotDetect: { up: boolean; down: boolean };
}

/**
 * Mean and two standard deviations of the baseline.
 * @param bounds what the measure can reach, for example 0 to 100 percent
 * @param bounds.least fewest baseline values that a spread is taken from (`limitsOf`; at least two)
 * @returns null with fewer
 * Rule from memory, no published worked example: two consecutive later values outside the band count as change.
 */
export function twoSdBand(
  baseline: readonly number[],
  bounds: { min?: number; max?: number; least?: number } = {},
): TwoSdBand | null {
  if (baseline.length < Math.max(2, bounds.least ?? 2)) return null;
  const centre = mean([...baseline]);
  const sd = sampleStandardDeviation([...baseline]);
  const low = centre - 2 * sd;
  const high = centre + 2 * sd;
  const cannotDetect = {
    up: bounds.max !== undefined && high >= bounds.max,
    down: bounds.min !== undefined && low <= bounds.min,
  };
  return { mean: centre, sd, n: baseline.length, low, high, cannotDetect };
}

/** Where the later values first leave the band for two in a row. */
export interface BandExit {
  direction: 'up' | 'down';
  /** Index of the first of the two values. */
  index: number;
}

/** First run of two consecutive values on the same side outside the band, or null. */
export function bandExit(band: Interval, later: readonly number[]): BandExit | null {
  const side = (value: number | undefined) =>
    value === undefined ? 0 : value > band.high ? 1 : value < band.low ? -1 : 0;
  for (let i = 0; i + 1 < later.length; i++) {
    const here = side(later[i]);
    if (here !== 0 && here === side(later[i + 1])) return { direction: here > 0 ? 'up' : 'down', index: i };
  }
  return null;
}
