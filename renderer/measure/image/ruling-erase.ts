import { median } from '../../statistics/order-statistics.ts';
import type { GrayImage } from '../types.ts';
import { ERASED, INK, inkAt, paperAt } from './contrast.ts';
import type { Levels } from './contrast.ts';
import type { PrintedLine } from './ruling-lines.ts';
import { SOLID } from './printed-rulings.ts';
import type { Rulings } from './printed-rulings.ts';

/** Mark in the ink bitmap: pixel of a printed line, not judged yet. */
export const PRINTED = 3;
/** Pixels beyond the half-contrast edge of a printed line that still belong to it: its blurred edge. */
const EDGE = 1.3;
/** Less than this share of a printed line's darkness is noise beside it. */
const FAINT = 0.1;
/** Every so many pixels along a line its profile is taken: some eighty times. */
const PROFILE_STEP = 29;
/** How far print shows round a crossing, as a multiple of a band's reach. */
const CROSSING = 2;
/** Up to this share of the ink's contrast a printed line is told from ink by its gray level. */
export const PALE = 0.72;

/** A printed line with its place and strength across. */
export interface Band {
  line: PrintedLine;
  /** Half thickness with the blurred edge, pixels. */
  reach: number;
  /** Half thickness of the print itself, pixels. */
  half: number;
  /** Offset of its true middle from the fitted line, pixels. */
  offset: number;
  /** How much darker than the paper, gray levels. */
  depth: number;
  /** Step in the buffer along and across. */
  along: number;
  across: number;
  length: number;
  breadth: number;
}

/** The bands of all printed lines of a picture. */
export function bandsOf(image: GrayImage, rulings: Rulings, pxPerMm: number): Band[] {
  const { width, height } = image;
  const across = { along: 1, across: width, length: width, breadth: height };
  const down = { along: width, across: 1, length: height, breadth: width };
  const dashed = (line: PrintedLine): boolean => line.filled < SOLID;
  const bands = (lines: readonly PrintedLine[], place: typeof across): Band[] =>
    lines.map((line) => ({ line, ...place, ...profile(image, { line, ...place }, pxPerMm) }));
  return [
    ...alike(bands(rulings.across.filter(dashed), across)),
    ...alike(
      bands(
        rulings.across.filter((line) => !dashed(line)),
        across,
      ),
    ),
    // A margin is no line of the squares beside it, and no line of writing runs down the page.
    ...bands(rulings.down, down),
  ];
}

/** Lines of one print differ in depth and thickness by no more than this factor; beyond it writing was taken for print. */
const ALIKE = 1.3;

/** The bands of one kind of line, none much darker or thicker than they usually are: writing lies on some of them. */
function alike(bands: readonly Band[]): Band[] {
  const depth = ALIKE * (median(bands.map((band) => band.depth)) ?? 0);
  const reach = ALIKE * (median(bands.map((band) => band.reach)) ?? 0);
  return bands.map((band) => ({ ...band, depth: Math.min(band.depth, depth), reach: Math.min(band.reach, reach) }));
}

/** First place along a band and the one after its last. */
export function bandSpan(band: Band): [number, number] {
  return [band.line.from, Math.min(band.line.to, band.length)];
}

/** How far the middle of a band is moved from its fitted line: by half a pixel at most. */
export function bandOffset(band: Band): number {
  return Math.max(-0.5, Math.min(0.5, band.offset));
}

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

/**
 * Finds the solid printed line that runs square to a column (or row) within its own reach of a place.
 * @param blur standard deviation of the picture's blur, pixels
 */
export function printOf(
  bands: readonly Band[],
  blur: number,
): (x: number, y: number, step: 1 | -1, down: boolean) => Print | null {
  const solid = bands.filter((band) => band.line.filled >= SOLID);
  const lists = { across: solid.filter((b) => b.across > b.along), down: solid.filter((b) => b.across < b.along) };
  const below = (z: number): number => 1 / (1 + Math.exp((-NORMAL * z) / Math.max(blur, LEAST_BLUR)));
  const share = (d: number, half: number): number => below(d + half) - below(d - half);
  return (x, y, step, down) => {
    const [along, across] = down ? [x, y] : [y, x];
    for (const band of down ? lists.across : lists.down) {
      if (along < band.line.from || along >= band.line.to) continue;
      const off = band.line.intercept + band.line.slope * (along + 0.5) + bandOffset(band) - across - 0.5;
      if (Math.abs(off) > band.reach + NEARBY) continue;
      // The depth is that of the blurred line: a thin one is less deep and looks wider for it.
      const half = band.half * share(0, band.half);
      const most = share(0, half);
      return (out) => (band.depth * share(step * out - off, half)) / most;
    }
    return null;
  };
}

/** Even a sharp picture blurs by the width of its pixels. */
const LEAST_BLUR = 0.4;
/** Print further from a place than its reach and this has no part in it, pixels. */
const NEARBY = 3;

/** Average darkness across a line where there is no writing over it: thickness, middle and depth. */
function profile(
  image: GrayImage,
  g: { line: PrintedLine; along: number; across: number; length: number; breadth: number },
  pxPerMm: number,
): { reach: number; half: number; offset: number; depth: number } {
  const reach = Math.max(3, Math.round(0.6 * pxPerMm));
  const end = Math.min(g.line.to, g.length);
  const room = new Uint8Array(Math.max(0, Math.ceil((end - g.line.from) / PROFILE_STEP)));
  /** Gray levels along the line, `d` pixels beside it. */
  const seen = (d: number): Uint8Array => {
    let count = 0;
    for (let s = g.line.from; s < end; s += PROFILE_STEP) {
      const middle = Math.floor(g.line.intercept + g.line.slope * (s + 0.5));
      if (middle - reach < 0 || middle + reach >= g.breadth) continue;
      room[count] = image.data[(middle + d) * g.across + s * g.along]!;
      count += 1;
    }
    return room.subarray(0, count);
  };
  const curve = Array.from({ length: 2 * reach + 1 }, (_, i) => median(seen(i - reach)) ?? 0);
  const paper = Math.max(curve[0]!, curve[2 * reach]!);
  const dips = curve.map((level) => Math.max(0, paper - level));
  const depth = Math.max(...dips.slice(reach - 2, reach + 3));
  let sum = 0;
  let weight = 0;
  for (let d = -2; d <= 2; d += 1) {
    sum += d * dips[d + reach]!;
    weight += dips[d + reach]!;
  }
  const offset = weight > 0 ? Math.max(-1, Math.min(1, sum / weight)) : 0;
  let half = 1;
  while (half < reach && Math.max(dips[reach - half]!, dips[reach + half]!) > depth / 2) half += 1;
  const area = dips.reduce((sum, dip) => sum + (dip > FAINT * depth ? dip : 0), 0);
  return {
    reach: half - 0.5 + EDGE,
    half: depth > 0 ? area / depth / 2 : 0,
    offset,
    depth: g.line.filled < PALE ? depthOfDashes(seen(0), paper) : depth,
  };
}

/** The median across a dashed line mixes dashes and gaps: its darkest quarter is dash. */
function depthOfDashes(middle: Uint8Array, paper: number): number {
  const sorted = middle.slice().sort();
  return Math.max(0, paper - sorted[sorted.length >> 2]!);
}

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
