import type { Interval } from './wilson.ts';

/** Least count for which the extremes hold the median with 95 %. */
const LEAST = 6;

/**
 * 95 % interval of a median from order statistics: the narrowest symmetric pair of ranks with at least 95 %.
 * @returns null below six values
 * Source: Conover 1999, Practical Nonparametric Statistics, 3.2 (binomial ranks), from memory.
 */
export function medianInterval(values: ArrayLike<number>): Interval | null {
  const n = values.length;
  if (n < LEAST) return null;
  const sorted = Float64Array.from(values).sort();
  // Chance that fewer than k of n values lie below the median, summed from the end in logarithms.
  let below = 0;
  let rank = 0;
  let logTerm = n * Math.log(0.5);
  for (let k = 0; k < n; k += 1) {
    below += Math.exp(logTerm);
    if (below > 0.025) break;
    rank = k + 1;
    logTerm += Math.log((n - k) / (k + 1));
  }
  if (rank === 0) return null;
  return { low: sorted[rank - 1]!, high: sorted[n - rank]! };
}
