/** Rank agreement of two series of equal length. */
export interface KendallResult {
  /** Concordant minus discordant pairs. */
  s: number;
  /** Concordant pairs (the T of Hollander & Wolfe when there are no ties). */
  concordant: number;
  /** S over all pairs. */
  tau: number;
  /** S with pairs tied in either series taken out; null when a series is all one value. */
  tauB: number | null;
  /** Two-sided p; null when n < 2 or a series is all one value. */
  p: number | null;
  /** exact: from all orders of the values; normal: approximation corrected for ties. */
  pMethod: 'exact' | 'normal' | null;
}

/** Up to this many tied values every order is tried (8! = 40320); beyond, the normal approximation serves. */
const MOST_TIED_VALUES_TRIED = 8;
/** Without ties the exact distribution is a short recursion. */
const MOST_VALUES_EXACT = 50;

/**
 * Kendall's tau and tau-b with an exact p for small series.
 * @throws RangeError when the lengths differ
 * Source: Kendall 1970, Rank Correlation Methods; Hollander & Wolfe 1973, Nonparametric Statistical Methods.
 */
export function kendall(x: readonly number[], y: readonly number[]): KendallResult {
  if (x.length !== y.length) throw new RangeError('both series need the same length');
  const n = x.length;
  const pairs = (n * (n - 1)) / 2;
  const { s, concordant } = pairSums(x, y);
  const tiesX = tieSizes(x);
  const tiesY = tieSizes(y);
  const tiedPairs = (sizes: number[]) => sizes.reduce((sum, t) => sum + (t * (t - 1)) / 2, 0);
  const denominator = Math.sqrt((pairs - tiedPairs(tiesX)) * (pairs - tiedPairs(tiesY)));
  if (n < 2 || denominator === 0) {
    return { s, concordant, tau: pairs ? s / pairs : 0, tauB: null, p: null, pMethod: null };
  }
  const base = { s, concordant, tau: s / pairs, tauB: s / denominator };
  const tied = tiesX.length + tiesY.length > 0;
  if (!tied && n <= MOST_VALUES_EXACT) return { ...base, p: exactP(Math.abs(s), n), pMethod: 'exact' };
  if (n <= MOST_TIED_VALUES_TRIED) return { ...base, p: permutationP(x, y, Math.abs(s)), pMethod: 'exact' };
  return { ...base, p: normalP(s, kendallVariance(n, tiesX, tiesY)), pMethod: 'normal' };
}

/** P(S = s) for n untied values, indexed by the number of discordant pairs (0 to n(n-1)/2). */
export function discordantDistribution(n: number): number[] {
  let probability = [1];
  for (let size = 2; size <= n; size++) {
    const next = new Array<number>((size * (size - 1)) / 2 + 1).fill(0);
    probability.forEach((p, discordant) => {
      for (let added = 0; added < size; added++) next[discordant + added]! += p / size;
    });
    probability = next;
  }
  return probability;
}

/** Variance of S when nothing but chance orders the values, with ties in either series. */
export function kendallVariance(n: number, tiesX: readonly number[], tiesY: readonly number[]): number {
  const sum = (sizes: readonly number[], f: (t: number) => number) => sizes.reduce((total, t) => total + f(t), 0);
  const cubic = (t: number) => t * (t - 1) * (2 * t + 5);
  const triple = (t: number) => t * (t - 1) * (t - 2);
  const double = (t: number) => t * (t - 1);
  const main = (cubic(n) - sum(tiesX, cubic) - sum(tiesY, cubic)) / 18;
  const third = n > 2 ? (sum(tiesX, triple) * sum(tiesY, triple)) / (9 * n * (n - 1) * (n - 2)) : 0;
  const second = (sum(tiesX, double) * sum(tiesY, double)) / (2 * n * (n - 1));
  return main + third + second;
}

/** Sizes of the groups of equal values, groups of one left out. */
export function tieSizes(values: readonly number[]): number[] {
  const counts = new Map<number, number>();
  for (const value of values) counts.set(value, (counts.get(value) ?? 0) + 1);
  return [...counts.values()].filter((size) => size > 1);
}

function pairSums(x: readonly number[], y: readonly number[]): { s: number; concordant: number } {
  let s = 0;
  let concordant = 0;
  for (let i = 0; i < x.length; i++) {
    for (let j = i + 1; j < x.length; j++) {
      const sign = Math.sign(x[j]! - x[i]!) * Math.sign(y[j]! - y[i]!);
      s += sign;
      if (sign > 0) concordant++;
    }
  }
  return { s, concordant };
}

function exactP(absS: number, n: number): number {
  const pairs = (n * (n - 1)) / 2;
  const atMost = (pairs - absS) / 2;
  const tail = discordantDistribution(n)
    .slice(0, atMost + 1)
    .reduce((sum, p) => sum + p, 0);
  return Math.min(1, 2 * tail);
}

function permutationP(x: readonly number[], y: readonly number[], absS: number): number {
  let orders = 0;
  let asFar = 0;
  const order = [...y];
  const tryFrom = (k: number): void => {
    if (k === order.length) {
      orders++;
      if (Math.abs(pairSums(x, order).s) >= absS) asFar++;
      return;
    }
    for (let i = k; i < order.length; i++) {
      [order[k], order[i]] = [order[i]!, order[k]!];
      tryFrom(k + 1);
      [order[k], order[i]] = [order[i]!, order[k]!];
    }
  };
  tryFrom(0);
  return asFar / orders;
}

function normalP(s: number, variance: number): number {
  if (variance <= 0) return 1;
  // Continuity correction: S moves in steps, so the nearest step toward zero is taken.
  const z = Math.max(0, Math.abs(s) - 1) / Math.sqrt(variance);
  return Math.min(1, 2 * (1 - standardNormal(z)));
}

/** Normal distribution function. Source: Abramowitz & Stegun 1964, 26.2.17, error below 7.5e-8. */
function standardNormal(z: number): number {
  const t = 1 / (1 + 0.2316419 * z);
  const poly = t * (0.31938153 + t * (-0.356563782 + t * (1.781477937 + t * (-1.821255978 + t * 1.330274429))));
  return 1 - (Math.exp((-z * z) / 2) / Math.sqrt(2 * Math.PI)) * poly;
}
