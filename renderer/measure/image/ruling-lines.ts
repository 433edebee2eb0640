import { median } from '../../statistics/order-statistics.ts';
import { FULL, STRIP } from './ruling-votes.ts';
import type { Votes } from './ruling-votes.ts';
import { LEAST_SHARE, SUPPORT, LENGTH, JITTER, follow } from './ruling-follow.ts';
import type { PrintedLine } from './ruling-follow.ts';

/** Steepest turn looked for: 6 degrees. */
const STEEPEST = 0.105;
/** Support that is enough where a regular sheet must have a line. */
const HIDDEN_SUPPORT = 0.35;
/** Lines come again after one period to within this share of it, … */
const REGULAR = 0.03;
/** … and at least this share of them do. */
const LEAST_REGULAR = 0.5;
/** Steps of lag, in strips, by which the common slope is refined. */
const LAGS = [1, 4, 16];

/** Printed lines in one direction, all nearly parallel. */
export function printedLines(votes: Votes): PrintedLine[] {
  if (votes.strips < 4) return [];
  const marked = strongPlaces(votes);
  const slope = commonSlope(votes, marked);
  return candidates(votes, marked, slope)
    .map((at) => follow(votes, at, slope))
    .filter((line): line is PrintedLine => line !== null);
}

function strongPlaces(votes: Votes): number[][] {
  const least = Math.ceil(LEAST_SHARE * FULL);
  return Array.from({ length: votes.strips }, (_, s) => {
    const found: number[] = [];
    const { length, values } = votes;
    for (let i = 0, at = s * length; i < length; i += 1, at += 1) if (values[at]! >= least) found.push(i);
    return found;
  });
}

/** Slope by the shift that makes strips agree best, refined with ever larger distances. */
function commonSlope(votes: Votes, marked: readonly number[][]): number {
  const { length, values } = votes;
  let slope = 0;
  let reach = Math.ceil(STEEPEST * STRIP);
  for (const lag of LAGS) {
    if (lag >= votes.strips) break;
    const center = Math.round(slope * lag * STRIP);
    // A whole number below 16 for each pixel of the picture.
    const scores = new Int32Array(2 * reach + 1);
    for (let s = 0; s + lag < votes.strips; s += 1) {
      const base = (s + lag) * length;
      for (const at of marked[s]!) {
        const weight = values[s * length + at]!;
        const first = at + center - reach;
        for (let other = Math.max(first, 0), end = Math.min(first + 2 * reach, length - 1); other <= end; other += 1)
          scores[other - first]! += weight * values[base + other]!;
      }
    }
    let best = 0;
    for (let i = 1; i < scores.length; i += 1) if (scores[i]! > scores[best]!) best = i;
    slope = (center + best - reach + vertex(scores, best)) / (lag * STRIP);
    reach = 4;
  }
  return slope;
}

function vertex(curve: Int32Array, at: number): number {
  if (at === 0 || at === curve.length - 1) return 0;
  const bend = curve[at - 1]! - 2 * curve[at]! + curve[at + 1]!;
  return bend === 0 ? 0 : (curve[at - 1]! - curve[at + 1]!) / (2 * bend);
}

/** Places (at the middle of the picture) where many strips agree along the slope; local maxima. */
function candidates(votes: Votes, marked: readonly number[][], slope: number): number[] {
  const reach = Math.ceil((Math.abs(slope) * votes.strips * STRIP) / 2);
  const sums = new Float64Array(votes.length + 2 * reach);
  const middle = votes.strips / 2;
  for (let s = 0; s < votes.strips; s += 1) {
    const shift = Math.round(slope * (s + 0.5 - middle) * STRIP) - reach;
    const base = s * votes.length;
    for (const i of marked[s]!) sums[i - shift] = sums[i - shift]! + Math.min(votes.values[base + i]!, FULL / 2);
  }
  const needed = (LENGTH * SUPPORT * votes.strips * FULL) / 4;
  const found: number[] = [];
  for (let i = 2; i + 2 < sums.length; i += 1) {
    const wide = sums[i - 1]! + sums[i]! + sums[i + 1]!;
    if (wide < needed) continue;
    if (sums[i]! >= sums[i - 1]! && sums[i]! > sums[i + 1]! && sums[i]! >= sums[i - 2]! && sums[i]! > sums[i + 2]!)
      found.push(i - reach);
  }
  return found;
}

/**
 * Lines that a regular sheet must have and writing hides: wherever a line should lie one period from another, looked
 * for again with less support.
 * @param lines printed lines of one kind
 */
export function hiddenLines(votes: Votes, lines: readonly PrintedLine[]): PrintedLine[] {
  if (lines.length < 3) return [];
  const middle = (votes.strips / 2) * STRIP;
  const slope = median(lines.map((line) => line.slope))!;
  const placeOf = (line: PrintedLine): number => line.intercept + line.slope * middle;
  const places = lines.map(placeOf).sort((a, b) => a - b);
  const period = periodOf(places);
  if (period === null) return [];
  const found: PrintedLine[] = [];
  const missing = (place: number): boolean => places.every((other) => Math.abs(other - place) > period / 4);
  // A line found leads on to the next one.
  for (let next = places.slice(); next.length > 0;) {
    const fresh: number[] = [];
    for (const place of next.flatMap((at) => [at - period, at + period])) {
      if (!missing(place)) continue;
      const line = follow(votes, place, slope, HIDDEN_SUPPORT, true);
      if (!line || Math.abs(placeOf(line) - place) > REGULAR * period + JITTER || !missing(placeOf(line))) continue;
      found.push(line);
      places.push(placeOf(line));
      fresh.push(placeOf(line));
    }
    next = fresh;
  }
  return found;
}

/** Distance after which the pattern of lines comes again: one step, or up to three on paper with a line of tops and bottoms. */
function periodOf(places: readonly number[]): number | null {
  let best: number | null = null;
  let most = LEAST_REGULAR;
  for (let k = 1; k <= 3 && k + 1 < places.length; k += 1) {
    const steps = places.slice(k).map((place, i) => place - places[i]!);
    const period = median(steps)!;
    const next = places.filter((place) =>
      places.some((other) => Math.abs(other - place - period) <= REGULAR * period + JITTER),
    );
    const share = next.length / (places.length - k);
    if (share > most + 0.1) [most, best] = [share, period];
  }
  return best;
}

/** The lines of one kind made as long as most of them are: writing hides the end of a line, the sheet does not. */
export function equallyLong(lines: readonly PrintedLine[]): PrintedLine[] {
  const from = median(lines.map((line) => line.from)) ?? 0;
  const to = median(lines.map((line) => line.to)) ?? 0;
  return lines.map((line) => ({ ...line, from: Math.min(line.from, from), to: Math.max(line.to, to) }));
}
