/** How often a page is drawn anew from its own words or lines: enough for the second digit of an interval. */
const DRAWS = 200;
/** Below this many clusters an interval says nothing. */
const LEAST_CLUSTERS = 3;

export interface Interval {
  low: number | null;
  high: number | null;
}

export const UNKNOWN: Interval = { low: null, high: null };

/**
 * 95 % percentile interval by drawing whole clusters (words or lines) with replacement: letters of one word are alike
 * (Efron & Tibshirani 1993, from memory).
 * @param clusters what is drawn
 * @param statistic value of a drawn page; null draws are left out
 * @param chance seeded numbers in [0, 1)
 */
export function interval<T>(
  clusters: readonly T[],
  statistic: (drawn: readonly T[]) => number | null,
  chance: () => number,
): Interval {
  if (clusters.length < LEAST_CLUSTERS) return UNKNOWN;
  const values: number[] = [];
  const drawn: T[] = new Array<T>(clusters.length);
  for (let b = 0; b < DRAWS; b += 1) {
    for (let i = 0; i < clusters.length; i += 1) drawn[i] = clusters[Math.floor(chance() * clusters.length)]!;
    const value = statistic(drawn);
    if (value !== null && Number.isFinite(value)) values.push(value);
  }
  if (values.length < DRAWS / 2) return UNKNOWN;
  values.sort((a, b) => a - b);
  return { low: values[Math.floor(0.025 * values.length)]!, high: values[Math.ceil(0.975 * values.length) - 1]! };
}

/** Wilson's 95 % interval of a share (Wilson 1927; CLINICAL J). */
export function wilson(successes: number, n: number): Interval {
  if (n === 0) return UNKNOWN;
  const z = 1.959963984540054;
  const p = successes / n;
  const middle = p + (z * z) / (2 * n);
  const half = z * Math.sqrt((p * (1 - p)) / n + (z * z) / (4 * n * n));
  const whole = 1 + (z * z) / n;
  return { low: Math.max(0, (middle - half) / whole), high: Math.min(1, (middle + half) / whole) };
}
