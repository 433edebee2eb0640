/** Shrinking along a line, with an interval over the lines. */
import { studentQuantile } from '../statistics/student-quantile.ts';

/** Mean and 95 % interval; the interval is null with too few lines. */
export interface SlopeInterval {
  mid: number;
  low: number | null;
  high: number | null;
}

const LINES_LEAST = 3;
const UPPER = 0.975;

const meanOf = (values: readonly number[]): number => values.reduce((a, b) => a + b, 0) / values.length;

/**
 * Mean slope of several lines, each already robust in itself (Theil-Sen), with Student's interval over the lines.
 * @param slopes at least one
 * @throws RangeError without a slope
 */
export function slopeInterval(slopes: readonly number[]): SlopeInterval {
  if (slopes.length === 0) throw new RangeError('a mean needs at least one slope');
  const mid = meanOf(slopes);
  if (slopes.length < LINES_LEAST) return { mid, low: null, high: null };
  const squares = slopes.reduce((sum, slope) => sum + (slope - mid) ** 2, 0);
  const df = slopes.length - 1;
  const half = studentQuantile(UPPER, df) * Math.sqrt(squares / df / slopes.length);
  return { mid, low: mid - half, high: mid + half };
}

/**
 * Change from line to line where each line has one value: least squares, Student's interval with lines - 2.
 * @param values in the order of the lines, at least two
 * @throws RangeError with fewer than two values
 */
export function lineTrend(values: readonly number[]): SlopeInterval {
  const n = values.length;
  if (n < 2) throw new RangeError('a trend needs at least two lines');
  const middle = (n - 1) / 2;
  const mean = meanOf(values);
  const spread = values.reduce((sum, _, i) => sum + (i - middle) ** 2, 0);
  const mid = values.reduce((sum, value, i) => sum + (i - middle) * (value - mean), 0) / spread;
  if (n < LINES_LEAST) return { mid, low: null, high: null };
  const squares = values.reduce((sum, value, i) => sum + (value - mean - mid * (i - middle)) ** 2, 0);
  const half = studentQuantile(UPPER, n - 2) * Math.sqrt(squares / (n - 2) / spread);
  return { mid, low: mid - half, high: mid + half };
}
