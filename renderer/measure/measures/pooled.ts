import { interval, Sorted } from './bootstrap.ts';
import type { Draws } from './bootstrap.ts';
import { quantile, standardDeviation } from '../order-statistics.ts';
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

/** Coefficient of variation in percent; unknown below `least` values. */
export function variation(clusters: readonly (readonly number[])[], least: number, draws: Draws): Reading {
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
    if (count < 2 || sum <= 0) return null;
    const variance = (square - (sum * sum) / count) / (count - 1);
    return (100 * Math.sqrt(Math.max(0, variance))) / (sum / count);
  };
  const once = new Int32Array(filled.length).fill(1);
  return { value: percent(once), n, ...interval(filled.length, percent, draws), spread: null };
}
