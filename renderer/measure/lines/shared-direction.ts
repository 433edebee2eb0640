import { median, scatter } from '../../statistics/order-statistics.ts';
import { theilSenLine } from '../../statistics/theil-sen.ts';

/** What was measured of one line, with the variance that the unevenness of its letters gives it. */
export interface OfLine {
  /** Number of the line. */
  at: number;
  value: number;
  noise: number;
}

/** So many lines tell how far the lines of a page differ. */
const LEAST_LINES = 4;
/** Rounds of finding the shared value; it settles after three. */
const ROUNDS = 4;
/** Median of the square of a standard normal value. */
const USUAL_SQUARE = 0.455;
/** Lines further than this many of their uncertainties from the shared value do not count for it (bisquare). */
const REACH = 4;
/** A change down the page is believed from twice its own uncertainty on: most pages have none. */
const CHANCE = 4;

/**
 * Values of the lines of a page shrunk toward what they share, as far as they differ no more than the unevenness of their
 * letters makes them differ (shrinkage of many means, James & Stein 1961, from memory; robust, so that a line read wrongly
 * does not count). They may change evenly down the page. Null where there are too few lines to tell.
 */
export function drawnTogether(lines: readonly OfLine[]): number[] | null {
  if (lines.length < LEAST_LINES) return null;
  const usual = median(lines.map(({ noise }) => noise))!;
  if (!(usual > 0)) return null;
  const drift = driftOf(lines, usual);
  const level = lines.map(({ at, value }) => value - drift * at);
  const spreadAbout = (middle: number): number =>
    median(lines.map(({ noise }, i) => (level[i]! - middle) ** 2 / noise))! / USUAL_SQUARE;
  let shared = median(level)!;
  for (let round = 0; round < ROUNDS; round += 1) {
    const reach = REACH ** 2 * Math.max(1, spreadAbout(shared));
    let [sum, total] = [0, 0];
    lines.forEach(({ noise }, i) => {
      const t = (level[i]! - shared) ** 2 / noise / reach;
      const weight = t < 1 ? (1 - t) ** 2 / noise : 0;
      sum += weight * level[i]!;
      total += weight;
    });
    if (total > 0) shared = sum / total;
  }
  const ratio = (spreadAbout(shared) * (lines.length - 1)) / (lines.length - 3);
  const own = Math.max(0, ratio - 1) * usual;
  return lines.map(({ value, noise }, i) => value + (noise / (own + noise)) * (shared - level[i]!));
}

/** Change from line to line, shrunk toward none as far as chance makes one. */
function driftOf(lines: readonly OfLine[], noise: number): number {
  const at = lines.map((line) => line.at);
  const drift = theilSenLine(
    at,
    lines.map(({ value }) => value),
  )!.slope;
  return drift === 0 ? 0 : drift * Math.max(0, 1 - (CHANCE * noise) / (scatter(at) * drift ** 2));
}
