import type { GrayImage } from '../types.ts';
import { ERASED, INK, inkAt, paperAt } from './contrast.ts';
import type { Levels } from './contrast.ts';
import { SOLID } from './printed-rulings.ts';
import { PALE, bandSpan, bandOffset } from './ruling-bands.ts';
import type { Band } from './ruling-bands.ts';

/** Mark in the ink bitmap: pixel of a printed line, not judged yet. */
export const PRINTED = 3;
/** How far print shows round a crossing, as a multiple of a band's reach. */
const CROSSING = 2;

/** Marks all pixels of a printed line, so that the levels of ink are taken from writing alone. */
export function markBand(ink: Uint8Array, band: Band): void {
  eachPixel(band, (i) => (ink[i] = PRINTED));
}

/**
 * Whether a box of pixels lies where a printed line across crosses one down: two prints over each other are as dark as
 * ink, and what is left of them there is no writing.
 */
export function crossingOf(
  bands: readonly Band[],
): (left: number, top: number, right: number, bottom: number) => boolean {
  const across = bands.filter((band) => band.across > band.along);
  const down = bands.filter((band) => band.across < band.along);
  const lies = (band: Band, at: number, from: number, to: number): boolean => {
    const middle = band.line.intercept + band.line.slope * at + bandOffset(band);
    const reach = CROSSING * band.reach;
    return from >= middle - reach && to <= middle + reach;
  };
  return (left, top, right, bottom) =>
    down.some((band) => lies(band, (top + bottom) / 2, left, right)) &&
    across.some((band) => lies(band, (left + right) / 2, top, bottom));
}

/** How much darker than the paper solid print makes a place that lies `out` pixels further along a column or row. */
export type Print = (out: number) => number;

/** The logistic curve with this steepness is the normal distribution to a hundredth. */
const NORMAL = 1.702;

/** A solid printed line as what lies beside it sees it. */
export interface SolidPrint {
  band: Band;
  /** Half thickness that gives the depth of the blurred line, pixels, and the share of it that is seen in its middle. */
  half: number;
  most: number;
}

/** The solid printed lines of a page across and down it, with the steepness of their blurred edges, pixels. */
export interface SolidPrints {
  across: SolidPrint[];
  down: SolidPrint[];
  steepness: number;
}

/** How much of a line of a half thickness shows `d` pixels beside its middle. */
function shareOf(d: number, half: number, steepness: number): number {
  const below = (z: number): number => 1 / (1 + Math.exp((-NORMAL * z) / steepness));
  return below(d + half) - below(d - half);
}

/** @param blur standard deviation of the picture's blur, pixels */
export function solidPrints(bands: readonly Band[], blur: number): SolidPrints {
  const steepness = Math.max(blur, LEAST_BLUR);
  // The depth is that of the blurred line: a thin one is less deep and looks wider for it.
  const solid = bands
    .filter((band) => band.line.filled >= SOLID)
    .map((band) => {
      const half = band.half * shareOf(0, band.half, steepness);
      return { band, half, most: shareOf(0, half, steepness) };
    });
  return {
    across: solid.filter(({ band }) => band.across > band.along),
    down: solid.filter(({ band }) => band.across < band.along),
    steepness,
  };
}

/** Finds the solid printed line that runs square to a column (or row) within its own reach of a place. */
export function printOf(prints: SolidPrints): (x: number, y: number, step: 1 | -1, down: boolean) => Print | null {
  return (x, y, step, down) => {
    const [along, across] = down ? [x, y] : [y, x];
    for (const { band, half, most } of down ? prints.across : prints.down) {
      if (along < band.line.from || along >= band.line.to) continue;
      const off = band.line.intercept + band.line.slope * (along + 0.5) + bandOffset(band) - across - 0.5;
      if (Math.abs(off) > band.reach + NEARBY) continue;
      return (out) => (band.depth * shareOf(step * out - off, half, prints.steepness)) / most;
    }
    return null;
  };
}

/** Even a sharp picture blurs by the width of its pixels. */
const LEAST_BLUR = 0.4;
/** Print further from a place than its reach and this has no part in it, pixels. */
const NEARBY = 3;

/** Pixels of one column of a band, in whole pixels across; its true middle lies at `middle`. */
interface Column {
  s: number;
  from: number;
  to: number;
  middle: number;
}

/** Calls back with the buffer index of each pixel of a band, column by column. */
function eachPixel(band: Band, visit: (index: number, k: number, column: Column) => void): void {
  const offset = bandOffset(band);
  const [first, end] = bandSpan(band);
  for (let s = first; s < end; s += 1) {
    const middle = band.line.intercept + band.line.slope * (s + 0.5) + offset;
    const from = Math.max(0, Math.ceil(middle - band.reach - 0.5));
    const to = Math.min(band.breadth - 1, Math.floor(middle + band.reach - 0.5));
    const column = { s, from, to, middle };
    for (let k = from; k <= to; k += 1) visit(k * band.across + s * band.along, k, column);
  }
}

/**
 * Decides each marked pixel: ink when it is darker than halfway between the printed line and the ink (the line is the
 * paper there); where the line is as dark as the ink, ink only where a stroke goes on beyond the line. Else erased.
 */
export function eraseBand(image: GrayImage, ink: Uint8Array, band: Band, levels: Levels): void {
  const { width } = image;
  eachPixel(band, (i, k, column) => {
    if (ink[i] !== PRINTED) return;
    const x = i % width;
    const y = (i - x) / width;
    const paper = paperAt(levels, x, y);
    const contrast = paper - inkAt(levels, x, y);
    const share = contrast > 0 ? band.depth / contrast : 1;
    if (share < PALE) ink[i] = image.data[i]! <= paper - contrast * (0.5 + share / 2) ? INK : ERASED;
    else ink[i] = goesOn(ink, band, k, column) ? INK : ERASED;
  });
}

/**
 * Whether a stroke is seen to go on from this place: on both sides of the line, or on this side of its middle. A bottom
 * set on the line ends somewhere within it; its middle is the best guess.
 */
function goesOn(ink: Uint8Array, band: Band, k: number, { s, from, to, middle }: Column): boolean {
  const { across, along, breadth } = band;
  const isInk = (at: number): boolean => at >= 0 && at < breadth && ink[at * across + s * along] === INK;
  const before = isInk(from - 1) || isInk(from - 2);
  const after = isInk(to + 1) || isInk(to + 2);
  return before && after ? true : k + 0.5 < middle ? before : after;
}
