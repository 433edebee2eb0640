import { normalQuantile } from './normal-quantile.ts';

/** A closed interval; the unit is that of the value it belongs to. */
export interface Interval {
  low: number;
  high: number;
}

/**
 * Wilson score interval of a proportion, without continuity correction.
 * Words of one hand on one page are alike, so for words read the interval is a little too narrow: label it so.
 * @param right how many succeeded, 0 to `total`
 * @param total how many there were, at least 1
 * @param confidence two-sided, default 0.95
 * @returns proportions between 0 and 1
 * @throws RangeError when the counts are impossible
 * Source: Newcombe 1998, Statistics in Medicine 17:857-872, method 3.
 */
export function wilson(right: number, total: number, confidence = 0.95): Interval {
  if (!(total >= 1) || !(right >= 0) || right > total)
    throw new RangeError('right lies between 0 and total, total at least 1');
  const z = normalQuantile(confidence);
  const p = right / total;
  const centre = p + (z * z) / (2 * total);
  const spread = z * Math.sqrt((p * (1 - p)) / total + (z * z) / (4 * total * total));
  const scale = 1 + (z * z) / total;
  // The limits at 0 and 1 are exact by definition; rounding must not push them outside.
  return {
    low: right === 0 ? 0 : Math.max(0, (centre - spread) / scale),
    high: right === total ? 1 : Math.min(1, (centre + spread) / scale),
  };
}
