import { type Fit, leastSquares } from '../../statistics/least-squares.ts';
import { quantile } from '../../statistics/order-statistics.ts';
import { theilSenLine } from '../../statistics/theil-sen.ts';
import { CAPTURE, smoothCurve, steadied } from './baseline-curve.ts';
import type { Extreme } from './extremes.ts';
import { modeOf } from './density-peak.ts';
import type { Trace } from './trace.ts';
import { traceAt } from './trace.ts';

/** Bottoms within this of the smooth baseline (in x-heights) stand on it. */
const STANDS = 0.18;
/** From this waviness on (root mean square over x-height) a line is weighted by length instead of by letter. */
export const WAVY = 0.07;

export interface Baseline {
  curve: Trace;
  /** Straight line through the bottoms that stand on the curve, v = intercept + slope u. */
  straight: Fit;
  bottoms: Extreme[];
  /** Root mean square of the bottoms about the straight line, in pixels. */
  rms: number;
  /** Drawn by the therapist, not to be adjusted: what was read in its place. */
  byHand?: Baseline;
}

/** The baseline that was read, whether or not it was moved by hand since. */
export function asRead(baseline: Baseline): Baseline {
  return baseline.byHand ?? baseline;
}

/**
 * Baseline of one line: a smooth robust curve through the bottoms of its letters, then the straight line through the bottoms
 * that stand on that curve (a line trimmed by itself would cut a wave's crests off and under-read it).
 * @param offset expected distance of the baseline below the course of the line, pixels
 * @param isJoined whether a bottom is one of many of a piece of joined writing
 */
export function baselineOf(
  trace: Trace,
  bottoms: readonly Extreme[],
  offset: number,
  xHeight: number,
  isJoined: (bottom: Extreme) => boolean = () => false,
): Baseline | null {
  const own = bottoms.map((bottom) => bottom.v - traceAt(trace, bottom.u));
  const near = modeOf(own, offset - 0.6 * xHeight, offset + 0.6 * xHeight, 0.08 * xHeight) ?? offset;
  const caught = bottoms.filter((_, i) => Math.abs(own[i]! - near) < CAPTURE * xHeight);
  if (caught.length === 0) return null;
  const smooth = smoothCurve(trace, caught, near, xHeight);
  const lower = belowJoins(smooth, caught, xHeight, isJoined);
  const curve = { ...smooth, v: smooth.v.map((v) => v + lower) };
  const standing = caught.filter((bottom) => Math.abs(bottom.v - traceAt(curve, bottom.u)) < STANDS * xHeight);
  const chosen = standing.length > 0 ? standing : caught;
  chosen.sort((a, b) => a.u - b.u);
  const us = chosen.map((bottom) => bottom.u);
  const vs = chosen.map((bottom) => bottom.v);
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
  return {
    curve: steadied(curve, { ...straight, intercept: straight.intercept + lower }, chosen, xHeight),
    straight,
    bottoms: chosen,
    rms: rmsAbout(straight, us, vs, weights),
  };
}

/** The lowest joins of joined writing hang above the letters' bottoms: this share of its bottoms, the highest, are joins. */
const JOINS = 0.3;
/** Fewer bottoms of joined writing than this say nothing of it. */
const LEAST_JOINED = 5;

/** How far the bottoms of joined letters lie below the curve: their median without the highest three tenths, pixels. */
function belowJoins(
  curve: Trace,
  bottoms: readonly Extreme[],
  xHeight: number,
  isJoined: (bottom: Extreme) => boolean,
): number {
  if (bottoms.filter(isJoined).length < LEAST_JOINED) return 0;
  const off = (bottom: Extreme): number => bottom.v - traceAt(curve, bottom.u);
  const standing = bottoms.filter((bottom) => Math.abs(off(bottom)) < STANDS * xHeight);
  const joined = standing.filter(isJoined);
  if (joined.length < LEAST_JOINED || joined.length < standing.length / 2) return 0;
  const offs = joined.map(off);
  return quantile(offs, (1 + JOINS) / 2)! - quantile(offs, 0.5)!;
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

/** Each bottom stands for the length of line nearest to it, so that a wave counts where there are few letters too. */
function shares(us: readonly number[]): number[] {
  return us.map((u, i) => {
    const left = i === 0 ? 0 : (u - us[i - 1]!) / 2;
    const right = i + 1 === us.length ? 0 : (us[i + 1]! - u) / 2;
    return Math.max(left + right, 1e-6);
  });
}

/** Least squares; few bottoms say little about the slope: then the median slope, or that of the line's course. */
function straightLine(us: number[], vs: number[], slope: number, weights: readonly number[] | null): Fit {
  const fit = us.length >= 6 ? leastSquares(us, vs, weights) : theilSenLine(us, vs);
  if (fit && us.length >= 3) return fit;
  const mean = vs.reduce((sum, v, i) => sum + v - slope * us[i]!, 0) / vs.length;
  return { slope, intercept: mean };
}
