import { median } from '../../statistics/order-statistics.ts';
import { lineTrend, slopeInterval, type SlopeInterval } from '../../statistics/least-squares.ts';
import { Sorted } from './bootstrap.ts';
import { NOTHING } from './measure.ts';
import type { Reading } from './measure.ts';

/** ln(height) of one line by place: index of the word or letter. */
export interface Course {
  at: number[];
  ln: number[];
  /** How many letters each rests on. */
  weight: number[];
}

/** Pairs nearer than this share of the line say next to nothing about its slope, and are many. */
const NEAR = 0.3;

/**
 * Theil-Sen slope pooled over lines: median of the slopes of all pairs within a line, each pair weighted by its
 * distance and letters (Theil 1950, Sen 1968; weights after Jaeckel 1972, from memory). Student's interval over the
 * lines' own slopes: drawing three or four lines again and again gave intervals that were too narrow.
 */
export function pooledSlope(courses: readonly Course[]): Reading {
  const used = courses.filter((course) => new Set(course.at).size > 1);
  const room = used.reduce((sum, { at }) => sum + (at.length * (at.length - 1)) / 2, 0);
  const slopes = new Float64Array(room);
  const clusters = new Int32Array(room);
  const weights = new Float64Array(room);
  let n = 0;
  used.forEach(({ at, ln, weight }, cluster) => {
    const near = NEAR * (at[at.length - 1]! - at[0]!);
    for (let i = 0; i < at.length; i += 1)
      for (let j = i + 1; j < at.length; j += 1) {
        const distance = at[j]! - at[i]!;
        if (distance <= near) continue;
        slopes[n] = (ln[j]! - ln[i]!) / distance;
        clusters[n] = cluster;
        weights[n] = (distance * weight[i]! * weight[j]!) / (weight[i]! + weight[j]!);
        n += 1;
      }
  });
  if (n === 0) return NOTHING;
  const sorted = new Sorted(slopes.subarray(0, n), clusters.subarray(0, n), weights.subarray(0, n), used.length);
  const value = sorted.median(new Int32Array(used.length).fill(1))!;
  return {
    value,
    n: courses.reduce((sum, course) => sum + course.at.length, 0),
    ...around(value, slopeInterval(sorted.clusterMedians())),
    spread: null,
  };
}

/** An interval as wide, with the robust value in its middle; none with too few lines. */
function around(value: number, { low, high }: SlopeInterval): Pick<Reading, 'low' | 'high'> {
  if (low === null || high === null) return { low, high };
  const half = (high - low) / 2;
  return { low: value - half, high: value + half };
}

/**
 * Theil-Sen slope of one value a line over line number (Theil 1950, Sen 1968), with the interval of least squares.
 * @param points one for each line that has a value, by line number; at least two
 * @param shown turns the slope into what is reported, larger for larger slopes
 */
export function slopeOverLines(
  points: readonly { index: number; value: number }[],
  shown: (slope: number) => number,
): Reading {
  const slopes = points.flatMap((a, i) => points.slice(i + 1).map((b) => (b.value - a.value) / (b.index - a.index)));
  const value = median(slopes);
  if (value === null) return { ...NOTHING, n: points.length };
  const trend = lineTrend(
    points.map((point) => point.value),
    points.map(({ index }) => index),
  );
  const { low, high } = around(value, trend);
  return {
    value: shown(value),
    n: points.length,
    low: low === null ? null : shown(low),
    high: high === null ? null : shown(high),
    spread: null,
  };
}
