import { leastSquares, quantile, theilSen } from '../numbers.ts';
import type { Fit } from '../numbers.ts';
import type { Extreme } from './extremes.ts';
import { modeOf } from './mode.ts';
import type { Trace } from './trace.ts';
import { traceAt, traceEnd } from './trace.ts';

/** Feet further than this from the expected baseline (in x-heights) are descenders, dots or arms of letters. */
const CAPTURE = 0.33;
/** Feet within this of the smooth baseline (in x-heights) stand on it. */
export const STANDS = 0.18;
/** Half width of the smoothing window in x-heights: about a dozen letters, a fifth of the waves of a hand. */
const WINDOW = 6.5;
/** From this waviness on (root mean square over x-height) a line is weighted by length instead of by letter. */
const WAVY = 0.07;
/** Rounds of reweighting; the weights settle after three or four. */
const ROUNDS = 4;
/** Distance between nodes of the curve in x-heights. */
const NODE = 0.5;

export interface Baseline {
  curve: Trace;
  /** Straight line through the feet that stand on the curve, v = intercept + slope u. */
  straight: Fit;
  feet: Extreme[];
  /** Root mean square of the feet about the straight line, in pixels. */
  rms: number;
}

/**
 * Baseline of one line: a smooth robust curve through the feet of its letters, then the straight line through the feet
 * that stand on that curve (a line trimmed by itself would cut a wave's crests off and under-read it).
 * @param offset expected distance of the baseline below the course of the line, pixels
 * @param isJoined whether a foot is one of many of a piece of joined writing
 */
export function baselineOf(
  trace: Trace,
  feet: readonly Extreme[],
  offset: number,
  xHeight: number,
  isJoined: (foot: Extreme) => boolean = () => false,
): Baseline | null {
  const own = feet.map((foot) => foot.v - traceAt(trace, foot.u));
  const near = modeOf(own, offset - 0.6 * xHeight, offset + 0.6 * xHeight, 0.08 * xHeight) ?? offset;
  const caught = feet.filter((_, i) => Math.abs(own[i]! - near) < CAPTURE * xHeight);
  if (caught.length === 0) return null;
  const curve = belowJoins(smoothCurve(trace, caught, near, xHeight), caught, xHeight, isJoined);
  const standing = caught.filter((foot) => Math.abs(foot.v - traceAt(curve, foot.u)) < STANDS * xHeight);
  const chosen = standing.length > 0 ? standing : caught;
  chosen.sort((a, b) => a.u - b.u);
  const us = chosen.map((foot) => foot.u);
  const vs = chosen.map((foot) => foot.v);
  const level = straightLine(us, vs, trace.slope, null);
  const wavy =
    rmsAbout(
      level,
      us,
      us.map((u) => traceAt(curve, u)),
      null,
    ) >
    WAVY * xHeight;
  const weights = wavy ? shares(us) : null;
  const straight = wavy ? straightLine(us, vs, trace.slope, weights) : level;
  return { curve, straight, feet: chosen, rms: rmsAbout(straight, us, vs, weights) };
}

/** The lowest joins of joined writing hang above the letters' feet: this share of its feet, the highest, are joins. */
const JOINS = 0.2;

/** The curve of joined writing, moved down to the feet of its letters: the median without the highest fifth. */
function belowJoins(
  curve: Trace,
  feet: readonly Extreme[],
  xHeight: number,
  isJoined: (foot: Extreme) => boolean,
): Trace {
  const off = (foot: Extreme): number => foot.v - traceAt(curve, foot.u);
  const standing = feet.filter((foot) => Math.abs(off(foot)) < STANDS * xHeight);
  const joined = standing.filter(isJoined);
  if (joined.length < 5 || joined.length < standing.length / 2) return curve;
  const offs = joined.map(off);
  const shift = quantile(offs, (1 + JOINS) / 2)! - quantile(offs, 0.5)!;
  return { ...curve, v: curve.v.map((v) => v + shift) };
}

/** Root mean square distance from a straight line. */
function rmsAbout(line: Fit, us: readonly number[], vs: readonly number[], weights: readonly number[] | null): number {
  let square = 0;
  let total = 0;
  us.forEach((u, i) => {
    const w = weights?.[i] ?? 1;
    square += w * (vs[i]! - line.intercept - line.slope * u) ** 2;
    total += w;
  });
  return Math.sqrt(square / total);
}

/** Each foot stands for the length of line nearest to it, so that a wave counts where there are few letters too. */
function shares(us: readonly number[]): number[] {
  return us.map((u, i) => {
    const left = i === 0 ? 0 : (u - us[i - 1]!) / 2;
    const right = i + 1 === us.length ? 0 : (us[i + 1]! - u) / 2;
    return Math.max(left + right, 1e-6);
  });
}

/** Least squares; few feet say little about the slope: then the median slope, or that of the line's course. */
function straightLine(us: number[], vs: number[], slope: number, weights: readonly number[] | null): Fit {
  const fit = us.length >= 6 ? leastSquares(us, vs, weights) : theilSen(us, vs);
  if (fit && us.length >= 3) return fit;
  const mean = vs.reduce((sum, v, i) => sum + v - slope * us[i]!, 0) / vs.length;
  return { slope, intercept: mean };
}

/** Local quadratic fits with tricube weights, made robust by bisquare weights (as loess: Cleveland 1979, from memory). */
function smoothCurve(trace: Trace, feet: readonly Extreme[], offset: number, xHeight: number): Trace {
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
