import { wilson, type Interval } from './wilson.ts';

/** Difference of two proportions, each between 0 and 1; positive when the first is larger. */
export interface ProportionDifference extends Interval {
  difference: number;
}

/**
 * Difference of two independent proportions with its interval built from the two Wilson intervals.
 * @param right1 successes of the first, out of `total1` (at least 1); likewise the second
 * @throws RangeError when the counts are impossible
 * Source: Newcombe 1998, Statistics in Medicine 17:873-890, method 10.
 */
export function newcombeDifference(
  right1: number,
  total1: number,
  right2: number,
  total2: number,
  confidence = 0.95,
): ProportionDifference {
  const first = wilson(right1, total1, confidence);
  const second = wilson(right2, total2, confidence);
  const p1 = right1 / total1;
  const p2 = right2 / total2;
  const difference = p1 - p2;
  return {
    difference,
    low: difference - Math.hypot(p1 - first.low, second.high - p2),
    high: difference + Math.hypot(first.high - p1, p2 - second.low),
  };
}
