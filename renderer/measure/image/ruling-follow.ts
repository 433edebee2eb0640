import { leastSquares } from '../../statistics/least-squares.ts';
import { median } from '../../statistics/order-statistics.ts';
import { FULL, STRIP } from './ruling-votes.ts';
import type { Votes } from './ruling-votes.ts';

/** A printed line as `at(s) = intercept + slope * s`, s in pixels along it from the picture's edge. */
export interface PrintedLine {
  slope: number;
  intercept: number;
  /** First and last pixel along it. */
  from: number;
  to: number;
  /** Share of its length that is ink: about a half for a dashed line. */
  filled: number;
}

/** Cells with at least this share of votes take part: a dashed line has half. */
export const LEAST_SHARE = 0.25;
/** A printed line is seen in this share of the strips between its ends … */
export const SUPPORT = 0.72;
/** … and is at least this share of the page long: writing never is, at one height. */
export const LENGTH = 0.45;
/** Distance between the places of one line in neighboring strips that is still noise, pixels. */
export const JITTER = 2;

/** Where a line was seen in a strip, and the share of its votes there. */
interface Seen {
  s: number;
  at: number;
  share: number;
}

/**
 * Follows one line from strip to strip and fits it; null when it is not a printed line.
 * @param parallel keep the slope given: what little is seen of a hidden line bends with the writing over it
 */
export function follow(
  votes: Votes,
  middleAt: number,
  slope: number,
  needed = SUPPORT,
  parallel = false,
): PrintedLine | null {
  const middle = (votes.strips / 2) * STRIP;
  let fit = { slope, intercept: middleAt - slope * middle };
  let seen: Seen[] = [];
  let inside = votes.strips;
  for (let round = 0; round < 2; round += 1) {
    seen = [];
    inside = 0;
    for (let s = 0; s < votes.strips; s += 1) {
      const along = (s + 0.5) * STRIP;
      const expected = fit.intercept + fit.slope * along;
      if (expected >= 0 && expected < votes.length) inside += 1;
      const place = centroid(votes, s, expected, round === 0 ? 3 : JITTER);
      if (place) seen.push(place);
    }
    if (seen.length < 4) return null;
    const middleOff = median(seen.map((p) => p.at - fit.intercept - fit.slope * (p.s + 0.5) * STRIP))!;
    const good = seen.filter(
      (p) => Math.abs(p.at - fit.intercept - fit.slope * (p.s + 0.5) * STRIP - middleOff) <= JITTER,
    );
    const refined = leastSquares(
      good.map((p) => (p.s + 0.5) * STRIP),
      good.map((p) => p.at),
    );
    if (!refined) return null;
    fit = parallel ? { slope, intercept: fit.intercept + middleOff } : refined;
  }
  const [first, last] = trimmed(seen.map((p) => p.s));
  const length = last - first + 1;
  const within = seen.filter((p) => p.s >= first && p.s <= last);
  if (within.length < needed * length || length < LENGTH * Math.max(inside, votes.strips / 3)) return null;
  const best = within.map((p) => p.share).sort((a, b) => b - a);
  return {
    slope: fit.slope,
    intercept: fit.intercept,
    from: first <= 1 ? 0 : first * STRIP,
    // The last strip ends before the picture does.
    to: last >= votes.strips - 2 ? votes.strips * STRIP + STRIP : (last + 1) * STRIP,
    // The clearest quarter of the strips has no writing over it.
    filled: best[best.length >> 2]!,
  };
}

/** Ends of a line: single far-off strips are writing, not the line. */
function trimmed(strips: readonly number[]): [number, number] {
  let first = 0;
  let last = strips.length - 1;
  while (first + 2 < last && strips[first + 2]! - strips[first]! > 4) first += 1;
  while (last - 2 > first && strips[last]! - strips[last - 2]! > 4) last -= 1;
  return [strips[first]!, strips[last]!];
}

function centroid(votes: Votes, s: number, expected: number, reach: number): Seen | null {
  const from = Math.max(0, Math.round(expected) - reach);
  const to = Math.min(votes.length - 1, Math.round(expected) + reach);
  let sum = 0;
  let weight = 0;
  let most = 0;
  for (let i = from; i <= to; i += 1) {
    const v = votes.values[s * votes.length + i]!;
    most = Math.max(most, v);
    sum += v * i;
    weight += v;
  }
  if (most < LEAST_SHARE * FULL) return null;
  return { s, at: sum / weight + 0.5, share: most / FULL };
}
