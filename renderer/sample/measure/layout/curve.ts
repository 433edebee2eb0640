import type { Fit } from '../numbers.ts';
import type { Extreme } from './extremes.ts';
import type { Trace } from './trace.ts';
import { traceAt, traceEnd } from './trace.ts';

/** Feet further than this from the expected baseline (in x-heights) are descenders, dots or arms of letters. */
export const CAPTURE = 0.33;
/** Half width of the smoothing window in x-heights: about a dozen letters, a fifth of the waves of a hand. */
const WINDOW = 6.5;
/** Rounds of reweighting; the weights settle after three or four. */
const ROUNDS = 4;
/** Distance between nodes of the curve in x-heights. */
const NODE = 0.5;

/** Local quadratic fits with tricube weights, made robust by bisquare weights (as loess: Cleveland 1979, from memory). */
export function smoothCurve(trace: Trace, feet: readonly Extreme[], offset: number, xHeight: number): Trace {
  let first = Infinity;
  let last = -Infinity;
  for (const foot of feet) {
    first = Math.min(first, foot.u);
    last = Math.max(last, foot.u);
  }
  first = Math.min(first, trace.u0);
  last = Math.max(last, traceEnd(trace));
  const step = NODE * xHeight;
  const nodes = Math.max(2, Math.ceil((last - first) / step) + 1);
  const curve: Trace = { u0: first, step, v: new Float64Array(nodes), slope: trace.slope };
  for (let i = 0; i < nodes; i += 1) curve.v[i] = traceAt(trace, first + i * step) + offset;
  let reach = CAPTURE * xHeight;
  const robust = new Float64Array(feet.length).fill(1);
  for (let round = 0; round < ROUNDS; round += 1) {
    const base = curve.v.slice();
    const residual = feet.map((foot) => foot.v - traceAt({ ...curve, v: base }, foot.u));
    for (let i = 0; i < feet.length; i += 1) {
      const t = residual[i]! / reach;
      robust[i] = Math.abs(t) < 1 ? (1 - t * t) ** 2 : 0;
    }
    for (let i = 0; i < nodes; i += 1)
      curve.v[i] = base[i]! + localFit(feet, residual, robust, first + i * step, WINDOW * xHeight);
    reach = Math.max(0.2 * xHeight, reach * 0.75);
  }
  return curve;
}

/** Value at `u` of the weighted quadratic through the residuals; lower degree where the feet are too few. */
function localFit(
  feet: readonly Extreme[],
  residual: readonly number[],
  robust: Float64Array,
  u: number,
  window: number,
): number {
  const s = new Float64Array(5);
  const t = new Float64Array(3);
  let count = 0;
  let leftmost = Infinity;
  let rightmost = -Infinity;
  for (let i = 0; i < feet.length; i += 1) {
    const d = (feet[i]!.u - u) / window;
    if (d <= -1 || d >= 1 || robust[i] === 0) continue;
    const cube = 1 - Math.abs(d) ** 3;
    const w = cube * cube * cube * robust[i]!;
    count += 1;
    leftmost = Math.min(leftmost, d);
    rightmost = Math.max(rightmost, d);
    let power = w;
    for (let k = 0; k < 5; k += 1) {
      s[k] = s[k]! + power;
      if (k < 3) t[k] = t[k]! + power * residual[i]!;
      power *= d;
    }
  }
  if (count === 0 || s[0]! < 1e-6) return 0;
  const spread = rightmost - leftmost;
  const outside = leftmost > 0 || rightmost < 0;
  if (count < 4 || spread < 0.4 || outside) return t[0]! / s[0]!;
  if (count < 7 || spread < 1) return linear(s, t);
  return quadratic(s, t);
}

function linear(s: Float64Array, t: Float64Array): number {
  const det = s[0]! * s[2]! - s[1]! * s[1]!;
  return det < 1e-9 ? t[0]! / s[0]! : (t[0]! * s[2]! - t[1]! * s[1]!) / det;
}

function quadratic(s: Float64Array, t: Float64Array): number {
  const [s0, s1, s2, s3, s4] = [s[0]!, s[1]!, s[2]!, s[3]!, s[4]!];
  const det = s0 * (s2 * s4 - s3 * s3) - s1 * (s1 * s4 - s2 * s3) + s2 * (s1 * s3 - s2 * s2);
  if (Math.abs(det) < 1e-9) return linear(s, t);
  return (t[0]! * (s2 * s4 - s3 * s3) - s1 * (t[1]! * s4 - s3 * t[2]!) + s2 * (t[1]! * s3 - s2 * t[2]!)) / det;
}

/** Variance of a local quadratic fit with tricube weights over that of one foot divided by the feet in its window. */
const FIT_NOISE = 3;

/**
 * The curve drawn towards the straight line as far as its bends are no more than the unevenness of single feet would
 * make (shrinkage by noise over signal, James & Stein 1961, from memory): heights are taken from it.
 */
export function steadied(curve: Trace, straight: Fit, feet: readonly Extreme[], xHeight: number): Trace {
  const span = feet[feet.length - 1]!.u - feet[0]!.u;
  const within = Math.min(feet.length, (feet.length * 2 * WINDOW * xHeight) / Math.max(span, 1));
  let [noise, signal] = [0, 0];
  for (const foot of feet) {
    const level = straight.intercept + straight.slope * foot.u;
    noise += (foot.v - traceAt(curve, foot.u)) ** 2;
    signal += (traceAt(curve, foot.u) - level) ** 2;
  }
  if (signal === 0) return curve;
  const kept = Math.max(0, 1 - (FIT_NOISE * noise) / within / signal);
  const v = curve.v.map((value, i) => {
    const level = straight.intercept + straight.slope * (curve.u0 + i * curve.step);
    return level + kept * (value - level);
  });
  return { ...curve, v };
}
