import { interval } from '../bootstrap.ts';
import { median, standardDeviation } from '../numbers.ts';
import { NOTHING } from './measure.ts';
import type { Reading } from './measure.ts';

/** Median of all values with an interval over clusters of them (the values of one word or line). */
export function pooledMedian(clusters: readonly (readonly number[])[], chance: () => number): Reading {
  const filled = clusters.filter((values) => values.length > 0);
  const all = filled.flat();
  if (all.length === 0) return NOTHING;
  return {
    value: median(all),
    n: all.length,
    ...interval(filled, (drawn) => median(drawn.flat()), chance),
    spread: standardDeviation(all),
  };
}

/** Coefficient of variation in percent; null below `least` values. */
export function variation(clusters: readonly (readonly number[])[], least: number, chance: () => number): Reading {
  const filled = clusters.filter((values) => values.length > 0);
  const n = filled.reduce((sum, values) => sum + values.length, 0);
  if (n < least) return { ...NOTHING, n };
  return {
    value: percent(filled.flat()),
    n,
    ...interval(filled, (drawn) => percent(drawn.flat()), chance),
    spread: null,
  };
}

function percent(values: readonly number[]): number | null {
  const deviation = standardDeviation(values);
  const mean = values.reduce((a, b) => a + b, 0) / values.length;
  return deviation === null || mean <= 0 ? null : (100 * deviation) / mean;
}
