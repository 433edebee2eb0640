import { mean, sampleStandardDeviation } from 'simple-statistics';
import type { Interval } from './wilson.ts';

/** How far two readers or occasions lie apart. Unit: that of the measure. */
export interface BlandAltmanResult {
  n: number;
  /** Mean of first minus second. */
  bias: number;
  sd: number;
  /** Limits of agreement: bias -+ factor * sd. */
  limits: Interval;
  seBias: number;
  seLimit: number;
}

/**
 * Limits of agreement of two series of paired values.
 * @param factor 1.96 by default; the paper's example uses 2
 * @returns null with fewer than two pairs
 * @throws RangeError when the lengths differ
 * Source: Bland & Altman 1986, Lancet i:307-310.
 */
export function blandAltman(
  first: readonly number[],
  second: readonly number[],
  factor = 1.96,
): BlandAltmanResult | null {
  if (first.length !== second.length) throw new RangeError('both series need the same length');
  const n = first.length;
  if (n < 2) return null;
  const differences = first.map((value, i) => value - second[i]!);
  const bias = mean(differences);
  const sd = sampleStandardDeviation(differences);
  return {
    n,
    bias,
    sd,
    limits: { low: bias - factor * sd, high: bias + factor * sd },
    seBias: sd / Math.sqrt(n),
    seLimit: Math.sqrt((3 * sd * sd) / n),
  };
}

/**
 * Repeatability of one method from pairs of repeated values: twice the standard deviation of the differences,
 * their true mean taken as zero.
 * @returns null without pairs
 * Source: Bland & Altman 1986, as above.
 */
export function repeatability(first: readonly number[], second: readonly number[]): number | null {
  if (first.length !== second.length) throw new RangeError('both series need the same length');
  if (first.length === 0) return null;
  return 2 * Math.sqrt(mean(first.map((value, i) => (value - second[i]!) ** 2)));
}
