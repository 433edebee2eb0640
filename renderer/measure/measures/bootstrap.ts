import { sortedOrder } from '../../statistics/order-statistics.ts';
import { seededNumbers } from '../seeded-numbers.ts';

/** How often a page is resampled from its own words or lines: its ends vary by a tenth of its width between seeds. */
const DRAWS = 120;

/** pages resampled: how often each of so many clusters comes in each of them. */
export type Draws = (clusters: number) => readonly Int32Array[];

/** Draws from a seed. All measures of a page are taken from the same drawn pages. */
export function seededDraws(seed: number): Draws {
  const known = new Map<number, Int32Array[]>();
  return (clusters) => {
    const before = known.get(clusters);
    if (before) return before;
    const chance = seededNumbers(seed);
    const room = new Int32Array(DRAWS * clusters);
    const drawn = Array.from({ length: DRAWS }, (_, draw) => {
      const times = room.subarray(draw * clusters, (draw + 1) * clusters);
      for (let i = 0; i < clusters; i += 1) times[Math.floor(chance() * clusters)]! += 1;
      return times;
    });
    known.set(clusters, drawn);
    return drawn;
  };
}
/** Below this many clusters an interval says nothing. */
const LEAST_CLUSTERS = 3;

export interface Interval {
  low: number | null;
  high: number | null;
}

const UNKNOWN: Interval = { low: null, high: null };

/**
 * 95 % percentile interval by drawing whole clusters (words or lines) with replacement: letters of one word are alike
 * (Efron & Tibshirani 1993, from memory).
 * @param clusters how many there are
 * @param statistic value of a drawn page, told how often each cluster was drawn; null draws are left out
 */
export function interval(clusters: number, statistic: (times: Int32Array) => number | null, draws: Draws): Interval {
  if (clusters < LEAST_CLUSTERS) return UNKNOWN;
  const values = new Float64Array(DRAWS);
  let n = 0;
  for (const times of draws(clusters)) {
    const value = statistic(times);
    if (value === null || !Number.isFinite(value)) continue;
    values[n] = value;
    n += 1;
  }
  if (n < DRAWS / 2) return UNKNOWN;
  values.subarray(0, n).sort();
  return { low: values[Math.floor(0.025 * n)]!, high: values[Math.ceil(0.975 * n) - 1]! };
}

/** Values in order of size, each with the cluster it belongs to and a weight: sorted once, drawn often. */
export class Sorted {
  readonly values: Float64Array;
  private readonly clusters: Int32Array;
  private readonly weights: Float64Array;
  /** Weight of each whole cluster. */
  private readonly totals: Float64Array;

  constructor(values: Float64Array, clusters: Int32Array, weights: Float64Array, clusterCount: number) {
    const order = sortedOrder(values);
    this.values = new Float64Array(values.length);
    this.clusters = new Int32Array(values.length);
    this.weights = new Float64Array(values.length);
    this.totals = new Float64Array(clusterCount);
    for (let i = 0; i < values.length; i += 1) this.totals[clusters[i]!]! += weights[i]!;
    for (let at = 0; at < values.length; at += 1) {
      const i = order[at]!;
      this.values[at] = values[i]!;
      this.clusters[at] = clusters[i]!;
      this.weights[at] = weights[i]!;
    }
  }

  /** The values of some lists, one list a cluster, all of weight 1. */
  static of(lists: readonly (readonly number[])[]): Sorted {
    const n = lists.reduce((sum, list) => sum + list.length, 0);
    const values = new Float64Array(n);
    const clusters = new Int32Array(n);
    let at = 0;
    lists.forEach((list, cluster) => {
      values.set(list, at);
      clusters.fill(cluster, at, at + list.length);
      at += list.length;
    });
    return new Sorted(values, clusters, new Float64Array(n).fill(1), lists.length);
  }

  /** The weight of a draw. */
  private weightOf(times: Int32Array): number {
    let total = 0;
    for (let c = 0; c < this.totals.length; c += 1) total += this.totals[c]! * times[c]!;
    return total;
  }

  /** Index of the (lower) weighted quantile of a draw; -1 when nothing was drawn. */
  private indexOf(times: Int32Array, share: number): number {
    const wanted = share * this.weightOf(times);
    if (wanted <= 0) return -1;
    const { weights, clusters } = this;
    let sum = 0;
    for (let i = 0; i < weights.length; i += 1) {
      sum += weights[i]! * times[clusters[i]!]!;
      if (sum >= wanted) return i;
    }
    return weights.length - 1;
  }

  median(times: Int32Array): number | null {
    return this.quantile(times, 0.5);
  }

  /** The (lower) weighted median of each cluster alone; none for those without weight. */
  clusterMedians(): number[] {
    const sums = new Float64Array(this.totals.length);
    const found = new Array<number | null>(sums.length).fill(null);
    for (let i = 0; i < this.values.length; i += 1) {
      const cluster = this.clusters[i]!;
      sums[cluster]! += this.weights[i]!;
      if (found[cluster] === null && sums[cluster]! >= 0.5 * this.totals[cluster]!) found[cluster] = this.values[i]!;
    }
    return found.filter((value) => value !== null);
  }

  /** @param share 0 to 1, above 0 */
  quantile(times: Int32Array, share: number): number | null {
    const at = this.indexOf(times, share);
    return at < 0 ? null : this.values[at]!;
  }

  /** Median absolute deviation of a draw from its median: outward from it on both sides until half is reached. */
  deviation(times: Int32Array): number | null {
    const at = this.indexOf(times, 0.5);
    if (at < 0) return null;
    const { values, weights, clusters } = this;
    const middle = values[at]!;
    const half = this.weightOf(times) / 2;
    let sum = weights[at]! * times[clusters[at]!]!;
    let left = at - 1;
    let right = at + 1;
    let last = at;
    while (sum < half && (left >= 0 || right < values.length)) {
      const below = left >= 0 ? middle - values[left]! : Infinity;
      const above = right < values.length ? values[right]! - middle : Infinity;
      last = below <= above ? left-- : right++;
      sum += weights[last]! * times[clusters[last]!]!;
    }
    return Math.abs(values[last]! - middle);
  }
}
