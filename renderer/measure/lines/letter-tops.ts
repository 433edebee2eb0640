import { median, quantile } from '../../statistics/order-statistics.ts';
import { theilSenLine } from '../../statistics/theil-sen.ts';
import { densityCurve, lowestPeak } from './density-peak.ts';
import { drawnTogether } from './shared-direction.ts';
import type { OfLine } from './shared-direction.ts';

/** A top of the ink with its height above the baseline (pixels) and its place along the line (pixels). */
export interface LetterTop {
  u: number;
  height: number;
  /** One of several tops of a piece of joined writing. */
  joined: boolean;
}

/** ln(x-height) along a line: level at `u0` and change per pixel. */
export interface SizeTrend {
  u0: number;
  level: number;
  slope: number;
}

/** Tops within this of the trend in ln(height) belong to x-height letters; ascenders lie near ln 2 = 0.7 above. */
export const X_HEIGHT_BAND = 0.17;
/** Smoothing of ln(height): the small letters of one hand differ by about this much. */
const BANDWIDTH = 0.05;
/** Tall letters are at least this much (ln) taller; small ones are at least this share as many. */
const TALLER = 0.24;
const LOWER_SHARE = 0.5;
/** Largest change of ln(x-height) over 50 x-heights of line (about one line of writing) that is looked for. */
const STEEPEST = 0.9;
const SLOPES = 25;
/** How far (ln) below and above the expected height a line's own is looked for. */
const SOUGHT = { below: 0.75, above: 0.6 };
/** Fewer tops than this tell a size but no change of it. */
const LEAST_FOR_SLOPE = 12;

/** x-height at a place of the line, pixels. */
export function sizeAt(trend: SizeTrend, u: number): number {
  return Math.exp(trend.level + trend.slope * (u - trend.u0));
}

/**
 * Course of the x-height along a line: the straight line in ln(height) that most tops lie close to.
 * Starts from `expected` (pixels), and looks no further from it than `sought` (ln). A short line answers its mode with
 * no slope.
 */
export function sizeTrend(tops: readonly LetterTop[], expected: number, sought = SOUGHT): SizeTrend {
  const tall = tops.filter((top) => top.height > 0.35 * expected && top.height < 2.2 * expected);
  if (tall.length === 0) return { u0: 0, level: Math.log(expected), slope: 0 };
  const u0 = median(tall.map((top) => top.u))!;
  const logs = tall.map((top) => Math.log(top.height));
  const low = Math.log(expected) - sought.below;
  const high = Math.log(expected) + sought.above;
  let best = { k: 0, peak: -1, level: Math.log(expected), slope: 0 };
  const steps = tall.length < LEAST_FOR_SLOPE ? 1 : SLOPES;
  const shifted = new Float64Array(tall.length);
  const tried = (k: number): void => {
    const slope = steps === 1 ? 0 : ((2 * k) / (steps - 1) - 1) * (STEEPEST / (50 * expected));
    for (let i = 0; i < tall.length; i += 1) shifted[i] = logs[i]! - slope * (tall[i]!.u - u0);
    const density = densityCurve(shifted, low, high, BANDWIDTH)!;
    let at = 0;
    for (let i = 1; i < density.curve.length; i += 1) {
      if (density.curve[i]! > density.curve[at]!) at = i;
    }
    // A level line wins a tie: a slope must be earned.
    const peak = density.curve[at]! * (1 - 0.05 * Math.abs((2 * k) / Math.max(1, steps - 1) - 1));
    if (peak > best.peak) best = { k, peak, level: low + firstMode(density) * density.step, slope };
  };
  // Every second slope first, then the two beside the best.
  for (let k = 0; k < steps; k += 2) tried(k);
  const middle = best.k;
  for (const k of [middle - 1, middle + 1]) if (k > 0 && k < steps) tried(k);
  return refined(tall, logs, { u0, level: best.level, slope: best.slope }, steps > 1);
}

/** Sample of the first mode: small letters are the lower of two heights, even where tall ones are more. */
function firstMode({ curve, step }: { curve: Float64Array; step: number }): number {
  return lowestPeak(curve, LOWER_SHARE, Math.round(TALLER / step));
}

/** Tops that lie close to a trend: those of small letters. */
export function nearOnes(tops: readonly LetterTop[], trend: SizeTrend): LetterTop[] {
  return tops.filter((h) => h.height > 0 && Math.abs(Math.log(h.height / sizeAt(trend, h.u))) < X_HEIGHT_BAND);
}

/** The trend again after tops were left out or added: it moves a little only. */
export function adjustedTrend(tops: readonly LetterTop[], start: SizeTrend): SizeTrend {
  const tall = tops.filter((top) => top.height > 0);
  return refined(
    tall,
    tall.map((top) => Math.log(top.height)),
    start,
    tall.length >= LEAST_FOR_SLOPE,
  );
}

/** Two rounds of bisquare-weighted least squares about the trend. */
function refined(tops: readonly LetterTop[], logs: readonly number[], start: SizeTrend, withSlope: boolean): SizeTrend {
  let trend = start;
  for (let round = 0; round < 3; round += 1) {
    let w0 = 0;
    let w1 = 0;
    let w2 = 0;
    let t0 = 0;
    let t1 = 0;
    for (let i = 0; i < tops.length; i += 1) {
      const d = tops[i]!.u - trend.u0;
      const r = (logs[i]! - trend.level - trend.slope * d) / X_HEIGHT_BAND;
      if (Math.abs(r) >= 1) continue;
      const w = (1 - r * r) ** 2;
      w0 += w;
      w1 += w * d;
      w2 += w * d * d;
      t0 += w * logs[i]!;
      t1 += w * d * logs[i]!;
    }
    if (w0 === 0) return trend;
    const det = w0 * w2 - w1 * w1;
    if (withSlope && det > 1e-6 * w0 * w2) {
      const slope = (w0 * t1 - w1 * t0) / det;
      trend = { u0: trend.u0, slope, level: (t0 - slope * w1) / w0 };
    } else trend = { ...trend, level: t0 / w0 - (trend.slope * w1) / w0 };
  }
  return trend;
}

/** Courses of the size of all lines, shrunk together as far as the unevenness of their tops allows it; null for few. */
export function togetherTrends(lines: readonly { tops: readonly LetterTop[]; trend: SizeTrend }[]): SizeTrend[] | null {
  const middle = median(lines.map(({ trend }) => trend.u0))!;
  let [square, freedom] = [0, 0];
  const found = lines.map(({ tops, trend }) => {
    let [w, wu, wuu, own] = [0, 0, 0, 0];
    for (const { u, height } of tops) {
      const rest = height > 0 ? Math.log(height) - trend.level - trend.slope * (u - trend.u0) : Infinity;
      if (Math.abs(rest) >= X_HEIGHT_BAND) continue;
      w += 1;
      wu += u - middle;
      wuu += (u - middle) ** 2;
      own += rest ** 2;
    }
    square += own;
    freedom += Math.max(0, w - 2);
    return {
      level: trend.level + trend.slope * (middle - trend.u0),
      slope: trend.slope,
      w,
      at: wu / w,
      spread: wuu - wu ** 2 / w,
    };
  });
  if (freedom === 0) return null;
  const known = found.flatMap((line, at) => (line.w >= 3 && line.spread > 0 ? [{ ...line, line: at }] : []));
  const noise = square / freedom;
  const slopes = drawnTogether(
    known.map(({ line, slope, spread }) => ({ at: line, value: slope, noise: noise / spread })),
  );
  // Levels are told in the middle of each line's own tops, where its slope does not matter, and moved by the shared one.
  const told =
    slopes &&
    known.map(({ line, level, slope, w, at }, i) => ({
      at: line,
      value: level + (slope - slopes[i]!) * at,
      noise: noise / w,
    }));
  const levels = told && drawnTogether(lowerOnes(told));
  if (!slopes || !levels) return null;
  const trends = lines.map(({ trend }) => trend);
  known.forEach(({ line }, i) => {
    trends[line] = { u0: middle, level: levels[i]!, slope: slopes[i]! };
  });
  return trends;
}

/** Noise of a line that was read by its tall letters: it says nothing of the size of small ones. */
const UNTOLD = 1e3;

/**
 * Where the lines of a page fall into two sizes, the larger ones were read by their tall letters: they do not tell, as
 * far as the smaller ones are enough.
 */
function lowerOnes(lines: OfLine[]): OfLine[] {
  const drift = theilSenLine(
    lines.map(({ at }) => at),
    lines.map(({ value }) => value),
  );
  if (!drift) return lines;
  const rests = lines.map(({ at, value }) => value - drift.intercept - drift.slope * at);
  const density = densityCurve(rests, -1, 1, BANDWIDTH)!;
  const small = firstMode(density) * density.step - 1;
  return lines.map((line, i) => (rests[i]! - small > X_HEIGHT_BAND ? { ...line, noise: UNTOLD } : line));
}

/** Joined writing has more tops than letters: this share of them, the lowest, are entries and joins. */
const JOINS = 0.3;

/**
 * Tops of a line without the joins of joined writing: of its tops near the trend the lowest three tenths, which lie a few
 * percent below the letters (tried on five joined hands, whose x-height came out 1 to 5 % low with them).
 */
export function withoutJoins(tops: readonly LetterTop[], trend: SizeTrend): LetterTop[] {
  const ratio = (top: LetterTop): number => Math.log(Math.max(top.height, 1e-3)) - Math.log(sizeAt(trend, top.u));
  const joined = tops.filter((top) => top.joined && Math.abs(ratio(top)) < X_HEIGHT_BAND).map(ratio);
  const least = joined.length < 5 ? -Infinity : quantile(joined, JOINS)!;
  return tops.filter((top) => !top.joined || ratio(top) >= least || ratio(top) <= -X_HEIGHT_BAND);
}

/** Usual height of the tops of a page, pixels: the first mode of ln(height) around `expected`. */
export function usualHeight(heights: readonly number[], expected: number): number {
  const logs = heights.filter((h) => h > 0.3 * expected).map((h) => Math.log(h));
  const middle = Math.log(expected);
  const density = densityCurve(logs, middle - 0.7, middle + 0.7, BANDWIDTH);
  return density === null ? expected : Math.exp(middle - 0.7 + firstMode(density) * density.step);
}
