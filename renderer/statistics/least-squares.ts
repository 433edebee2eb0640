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
