/**
 * Natural cubic spline through samples at rising times, read off at `from`, `from + step` …
 * Source: de Boor 1978, A Practical Guide to Splines (tridiagonal system of second derivatives), from memory;
 * tests compare it with scipy.interpolate.CubicSpline(bc_type='natural').
 * @param t rising times
 * @param y values at them, as many, at least two
 */
export function naturalSpline(
  t: Float64Array,
  y: Float64Array,
  from: number,
  step: number,
  count: number,
): Float64Array {
  const n = t.length;
  const second = new Float64Array(n);
  const work = new Float64Array(n);
  for (let i = 1; i < n - 1; i += 1) {
    const before = t[i]! - t[i - 1]!;
    const after = t[i + 1]! - t[i]!;
    const share = before / (before + after);
    const p = share * second[i - 1]! + 2;
    second[i] = (share - 1) / p;
    const bend = (y[i + 1]! - y[i]!) / after - (y[i]! - y[i - 1]!) / before;
    work[i] = ((6 * bend) / (before + after) - share * work[i - 1]!) / p;
  }
  second[n - 1] = 0;
  for (let i = n - 2; i >= 0; i -= 1) second[i] = second[i]! * second[i + 1]! + work[i]!;

  const out = new Float64Array(count);
  let k = 0;
  for (let i = 0; i < count; i += 1) {
    const at = from + i * step;
    while (k < n - 2 && t[k + 1]! < at) k += 1;
    const h = t[k + 1]! - t[k]!;
    const a = (t[k + 1]! - at) / h;
    const b = 1 - a;
    out[i] =
      a * y[k]! + b * y[k + 1]! + (((a * a * a - a) * second[k]! + (b * b * b - b) * second[k + 1]!) * h * h) / 6;
  }
  return out;
}
