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
 * @param clusters how many there are
 * @param statistic value of a drawn page, told how often each cluster was drawn; null draws are left out
 * @param chance seeded numbers in [0, 1)
 */
export function interval(
  clusters: number,
  statistic: (times: Int32Array) => number | null,
  chance: () => number,
): Interval {
  if (clusters < LEAST_CLUSTERS) return UNKNOWN;
  const values: number[] = [];
  const times = new Int32Array(clusters);
  for (let b = 0; b < DRAWS; b += 1) {
    times.fill(0);
    for (let i = 0; i < clusters; i += 1) times[Math.floor(chance() * clusters)]! += 1;
    const value = statistic(times);
    if (value !== null && Number.isFinite(value)) values.push(value);
  }
  if (values.length < DRAWS / 2) return UNKNOWN;
  values.sort((a, b) => a - b);
  return { low: values[Math.floor(0.025 * values.length)]!, high: values[Math.ceil(0.975 * values.length) - 1]! };
}

/** Values in order of size, each with the cluster it belongs to and a weight: sorted once, drawn often. */
export class Sorted {
  readonly values: Float64Array;
  readonly clusters: Int32Array;
  readonly weights: Float64Array;

  constructor(entries: readonly { value: number; cluster: number; weight: number }[]) {
    const sorted = [...entries].sort((a, b) => a.value - b.value);
    this.values = Float64Array.from(sorted, (e) => e.value);
    this.clusters = Int32Array.from(sorted, (e) => e.cluster);
    this.weights = Float64Array.from(sorted, (e) => e.weight);
  }

  /** The values of some lists, one list a cluster. */
  static of(lists: readonly (readonly number[])[]): Sorted {
    return new Sorted(lists.flatMap((list, cluster) => list.map((value) => ({ value, cluster, weight: 1 }))));
  }

  weight(i: number, times: Int32Array): number {
    return this.weights[i]! * times[this.clusters[i]!]!;
  }

  /** Index of the (lower) weighted median of a draw; -1 when nothing was drawn. */
  medianAt(times: Int32Array): number {
    let total = 0;
    for (let i = 0; i < this.values.length; i += 1) total += this.weight(i, times);
    if (total <= 0) return -1;
    let sum = 0;
    for (let i = 0; i < this.values.length; i += 1) {
      sum += this.weight(i, times);
      if (sum >= total / 2) return i;
    }
    return this.values.length - 1;
  }

  median(times: Int32Array): number | null {
    const at = this.medianAt(times);
    return at < 0 ? null : this.values[at]!;
  }

  /** Median absolute deviation of a draw from its median: outward from it on both sides until half is reached. */
  deviation(times: Int32Array): number | null {
    const at = this.medianAt(times);
    if (at < 0) return null;
    const middle = this.values[at]!;
    let total = 0;
    for (let i = 0; i < this.values.length; i += 1) total += this.weight(i, times);
    let sum = this.weight(at, times);
    let [left, right, reached] = [at - 1, at + 1, 0];
    while (sum < total / 2 && (left >= 0 || right < this.values.length)) {
      const below = left >= 0 ? middle - this.values[left]! : Infinity;
      const above = right < this.values.length ? this.values[right]! - middle : Infinity;
      if (below <= above) {
        sum += this.weight(left, times);
        left -= 1;
        reached = below;
      } else {
        sum += this.weight(right, times);
        right += 1;
        reached = above;
      }
    }
    return reached;
  }
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
