import { interval, Sorted } from './bootstrap.ts';
import type { Draws } from './bootstrap.ts';
import { sortedOrder } from '../../statistics/order-statistics.ts';
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
 * distance and letters (Theil 1950, Sen 1968; weights after Jaeckel 1972, from memory). Interval by drawing lines.
 */
export function pooledSlope(courses: readonly Course[], draws: Draws): Reading {
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
  return {
    value: sorted.median(new Int32Array(used.length).fill(1)),
    n: courses.reduce((sum, course) => sum + course.at.length, 0),
    ...interval(used.length, (times) => sorted.median(times), draws),
    spread: null,
  };
}

/**
 * Theil-Sen slope of one value a line over line number (Theil 1950, Sen 1968), with an interval by drawing lines.
 * @param points one for each line that has a value, by line number
 * @param shown turns the slope into what is reported
 */
export function slopeOverLines(
  points: readonly { index: number; value: number }[],
  shown: (slope: number) => number,
  draws: Draws,
): Reading {
  const slopes: number[] = [];
  const firsts: number[] = [];
  const seconds: number[] = [];
  points.forEach((a, i) => {
    for (let j = i + 1; j < points.length; j += 1) {
      const b = points[j]!;
      slopes.push((b.value - a.value) / (b.index - a.index));
      firsts.push(i);
      seconds.push(j);
    }
  });
  if (slopes.length === 0) return { ...NOTHING, n: points.length };
  // The pairs of points by their slope.
  const order = sortedOrder(Float64Array.from(slopes));
  const sorted = Float64Array.from(order, (k) => slopes[k]!);
  const first = Int32Array.from(order, (k) => firsts[k]!);
  const second = Int32Array.from(order, (k) => seconds[k]!);
  const slope = (times: Int32Array): number | null => {
    // Each line makes a pair with each other one: half of what the square of their sum has beyond their squares.
    let lines = 0;
    let squares = 0;
    for (let i = 0; i < times.length; i += 1) {
      lines += times[i]!;
      squares += times[i]! * times[i]!;
    }
    const total = (lines * lines - squares) / 2;
    let sum = 0;
    for (let k = 0; k < sorted.length; k += 1) {
      const weight = times[first[k]!]! * times[second[k]!]!;
      // A whole number of pairs: the middle two are averaged as a median is.
      if (weight > 0 && sum < total / 2 && sum + weight >= total / 2) {
        if (sum + weight > total / 2) return shown(sorted[k]!);
        let next = k + 1;
        while (next < sorted.length && times[first[next]!]! * times[second[next]!]! === 0) next += 1;
        return shown((sorted[k]! + sorted[next < sorted.length ? next : k]!) / 2);
      }
      sum += weight;
    }
    return null;
  };
  const value = slope(new Int32Array(points.length).fill(1));
  return { value, n: points.length, ...interval(points.length, slope, draws), spread: null };
}
