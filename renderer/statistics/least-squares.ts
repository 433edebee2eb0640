import { studentQuantile } from './student-quantile.ts';

/** A straight line: y = intercept + slope x. */
export interface Fit {
  slope: number;
  intercept: number;
}

/** Least-squares line, weighted if weights are given; null when all x are equal. */
export function leastSquares(
  xs: ArrayLike<number>,
  ys: ArrayLike<number>,
  weights: ArrayLike<number> | null = null,
): Fit | null {
  let s = 0;
  let sx = 0;
  let sy = 0;
  for (let i = 0; i < xs.length; i += 1) {
    const w = weights ? weights[i]! : 1;
    s += w;
    sx += w * xs[i]!;
    sy += w * ys[i]!;
  }
  if (s === 0) return null;
  const mx = sx / s;
  const my = sy / s;
  let sxx = 0;
  let sxy = 0;
  for (let i = 0; i < xs.length; i += 1) {
    const w = weights ? weights[i]! : 1;
    sxx += w * (xs[i]! - mx) ** 2;
    sxy += w * (xs[i]! - mx) * (ys[i]! - my);
  }
  return sxx === 0 ? null : { slope: sxy / sxx, intercept: my - (sxy / sxx) * mx };
}

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
 * @param lines number of each line; 0, 1, 2 … when left out
 * @throws RangeError with fewer than two values
 */
export function lineTrend(
  values: readonly number[],
  lines: readonly number[] = values.map((_, i) => i),
): SlopeInterval {
  const n = values.length;
  if (n < 2) throw new RangeError('a trend needs at least two lines');
  const middle = meanOf(lines);
  const mean = meanOf(values);
  const spread = lines.reduce((sum, line) => sum + (line - middle) ** 2, 0);
  const mid = values.reduce((sum, value, i) => sum + (lines[i]! - middle) * (value - mean), 0) / spread;
  if (n < LINES_LEAST) return { mid, low: null, high: null };
  const squares = values.reduce((sum, value, i) => sum + (value - mean - mid * (lines[i]! - middle)) ** 2, 0);
  const half = studentQuantile(UPPER, n - 2) * Math.sqrt(squares / (n - 2) / spread);
  return { mid, low: mid - half, high: mid + half };
}
