import type { Fit } from '../../statistics/least-squares.ts';
import type { Extreme } from './extremes.ts';
import type { Trace } from './trace.ts';
import { traceAt, traceEnd } from './trace.ts';

/** Bottoms further than this from the expected baseline (in x-heights) are descenders, dots or arms of letters. */
export const CAPTURE = 0.33;
/** Half width of the smoothing window in x-heights: about a dozen letters, a fifth of the waves of a hand. */
const WINDOW = 6.5;
/** Rounds of reweighting; the weights settle after three or four. */
const ROUNDS = 4;
/** Distance between nodes of the curve in x-heights. */
const NODE = 0.5;

/** Local quadratic fits with tricube weights, made robust by bisquare weights (as loess: Cleveland 1979, from memory). */
export function smoothCurve(trace: Trace, unsorted: readonly Extreme[], offset: number, xHeight: number): Trace {
  const bottoms = [...unsorted].sort((a, b) => a.u - b.u);
  const us = new Float64Array(bottoms.length);
  for (let i = 0; i < bottoms.length; i += 1) us[i] = bottoms[i]!.u;
  const first = Math.min(us[0]!, trace.u0);
  const last = Math.max(us[us.length - 1]!, traceEnd(trace));
  const step = NODE * xHeight;
  const nodes = Math.max(2, Math.ceil((last - first) / step) + 1);
  const curve: Trace = { u0: first, step, v: new Float64Array(nodes), slope: trace.slope };
  for (let i = 0; i < nodes; i += 1) curve.v[i] = traceAt(trace, first + i * step) + offset;
  let reach = CAPTURE * xHeight;
  const window = WINDOW * xHeight;
  const residual = new Float64Array(bottoms.length);
  const robust = new Float64Array(bottoms.length);
  for (let round = 0; round < ROUNDS; round += 1) {
    for (let i = 0; i < bottoms.length; i += 1) {
      const off = bottoms[i]!.v - traceAt(curve, us[i]!);
      const t = off / reach;
      residual[i] = off;
      robust[i] = Math.abs(t) < 1 ? (1 - t * t) ** 2 : 0;
    }
    let from = 0;
    for (let i = 0; i < nodes; i += 1) {
      const u = first + i * step;
      while (from < us.length && us[from]! <= u - window) from += 1;
      curve.v[i]! += localFit(us, residual, robust, from, u, window);
    }
    reach = Math.max(0.2 * xHeight, reach * 0.75);
  }
  return curve;
}

/** Value at `u` of the weighted quadratic through the residuals from bottom `from` on; lower degree for few bottoms. */
function localFit(
  us: Float64Array,
  residual: Float64Array,
  robust: Float64Array,
  from: number,
  u: number,
  window: number,
): number {
  // Moments of the weights and of the weighted residuals: single numbers, kept in registers.
  let s0 = 0;
  let s1 = 0;
  let s2 = 0;
  let s3 = 0;
  let s4 = 0;
  let t0 = 0;
  let t1 = 0;
  let t2 = 0;
  let count = 0;
  let leftmost = Infinity;
  let rightmost = -Infinity;
  for (let i = from; i < us.length; i += 1) {
    const d = (us[i]! - u) / window;
    if (d >= 1) break;
    if (d <= -1 || robust[i] === 0) continue;
    const cube = 1 - Math.abs(d * d * d);
    const w = cube * cube * cube * robust[i]!;
    const r = residual[i]!;
    count += 1;
    if (d < leftmost) leftmost = d;
    if (d > rightmost) rightmost = d;
    s0 += w;
    s1 += w * d;
    s2 += w * d * d;
    s3 += w * d * d * d;
    s4 += w * d * d * d * d;
    t0 += w * r;
    t1 += w * d * r;
    t2 += w * d * d * r;
  }
  if (count === 0 || s0 < 1e-6) return 0;
  const spread = rightmost - leftmost;
  const outside = leftmost > 0 || rightmost < 0;
  if (count < 4 || spread < 0.4 || outside) return t0 / s0;
  if (count < 7 || spread < 1) return linear(s0, s1, s2, t0, t1);
  const det = s0 * (s2 * s4 - s3 * s3) - s1 * (s1 * s4 - s2 * s3) + s2 * (s1 * s3 - s2 * s2);
  if (Math.abs(det) < 1e-9) return linear(s0, s1, s2, t0, t1);
  return (t0 * (s2 * s4 - s3 * s3) - s1 * (t1 * s4 - s3 * t2) + s2 * (t1 * s3 - s2 * t2)) / det;
}

function linear(s0: number, s1: number, s2: number, t0: number, t1: number): number {
  const det = s0 * s2 - s1 * s1;
  return det < 1e-9 ? t0 / s0 : (t0 * s2 - t1 * s1) / det;
}

/** Variance of a local quadratic fit with tricube weights over that of one bottom divided by the bottoms in its window. */
const FIT_NOISE = 3;

/**
 * The curve shrunk toward the straight line as far as its bends are no more than the unevenness of single bottoms would
 * make (shrinkage by noise over signal, James & Stein 1961, from memory): heights are taken from it.
 */
export function steadied(curve: Trace, straight: Fit, bottoms: readonly Extreme[], xHeight: number): Trace {
  const span = bottoms[bottoms.length - 1]!.u - bottoms[0]!.u;
  const within = Math.min(bottoms.length, (bottoms.length * 2 * WINDOW * xHeight) / Math.max(span, 1));
  let [noise, signal] = [0, 0];
  for (const bottom of bottoms) {
    const level = straight.intercept + straight.slope * bottom.u;
    noise += (bottom.v - traceAt(curve, bottom.u)) ** 2;
    signal += (traceAt(curve, bottom.u) - level) ** 2;
  }
  if (signal === 0) return curve;
  const kept = Math.max(0, 1 - (FIT_NOISE * noise) / within / signal);
  const v = curve.v.map((value, i) => {
    const level = straight.intercept + straight.slope * (curve.u0 + i * curve.step);
    return level + kept * (value - level);
  });
  return { ...curve, v };
}
