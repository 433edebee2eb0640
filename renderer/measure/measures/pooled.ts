import { interval, Sorted } from './bootstrap.ts';
import type { Draws } from './bootstrap.ts';
import { quantile, standardDeviation } from '../../statistics/order-statistics.ts';
import { NOTHING } from './measure.ts';
import type { Reading } from './measure.ts';

/** Median of all values with an interval over clusters of them (the values of one word or line). */
export function pooledMedian(clusters: readonly (readonly number[])[], draws: Draws): Reading {
  return pooledQuantile(clusters, 0.5, draws);
}

/** The same for another quantile. @param share 0 to 1, above 0 */
export function pooledQuantile(clusters: readonly (readonly number[])[], share: number, draws: Draws): Reading {
  const filled = clusters.filter((values) => values.length > 0);
  const all = filled.flat();
  if (all.length === 0) return NOTHING;
  const sorted = Sorted.of(filled);
  return {
    value: quantile(all, share),
    n: all.length,
    ...interval(filled.length, (times) => sorted.quantile(times, share), draws),
    spread: standardDeviation(all),
  };
}

/**
 * Coefficient of variation in percent of values above 0 whose logarithms are near normal (heights): from the standard
 * deviation s of their logarithms, 100 root(exp(s squared) - 1). One value far off weighs less than in the plain form.
 */
export function logVariation(clusters: readonly (readonly number[])[], least: number, draws: Draws): Reading {
  // About the first value, so that equal ones have no spread at all.
  const first = clusters.flat()[0] ?? 1;
  const logs = clusters.map((values) => values.map((value) => Math.log(value / first)));
  return spreadOf(logs, least, draws, (_, variance) => 100 * Math.sqrt(Math.expm1(variance)));
}

/** Coefficient of variation in percent; unknown below `least` values. */
export function variation(clusters: readonly (readonly number[])[], least: number, draws: Draws): Reading {
  return spreadOf(clusters, least, draws, (mean, variance) => (mean > 0 ? (100 * Math.sqrt(variance)) / mean : null));
}

/** A number of mean and variance of all values, with an interval over clusters. */
function spreadOf(
  clusters: readonly (readonly number[])[],
  least: number,
  draws: Draws,
  of: (mean: number, variance: number) => number | null,
): Reading {
  const filled = clusters.filter((values) => values.length > 0);
  const n = filled.reduce((sum, values) => sum + values.length, 0);
  if (n < least) return { ...NOTHING, n };
  const parts = filled.map((values) => ({
    n: values.length,
    sum: values.reduce((a, b) => a + b, 0),
    square: values.reduce((a, b) => a + b * b, 0),
  }));
  const percent = (times: Int32Array): number | null => {
    let count = 0;
    let sum = 0;
    let square = 0;
    for (let i = 0; i < parts.length; i += 1) {
      const part = parts[i]!;
      count += times[i]! * part.n;
      sum += times[i]! * part.sum;
      square += times[i]! * part.square;
    }
    if (count < 2) return null;
    return of(sum / count, Math.max(0, (square - (sum * sum) / count) / (count - 1)));
  };
  const once = new Int32Array(filled.length).fill(1);
  return { value: percent(once), n, ...interval(filled.length, percent, draws), spread: null };
}
