import { median, medianOfBytes } from '../../statistics/order-statistics.ts';
import type { GrayImage } from '../types.ts';
import type { PrintedLine } from './ruling-follow.ts';
import { findRulings, SOLID } from './printed-rulings.ts';
import type { Rulings } from './printed-rulings.ts';
import type { Votes } from './ruling-votes.ts';

/** Pixels beyond the half-contrast edge of a printed line that still belong to it: its blurred edge. */
const EDGE = 1.3;
/** Less than this share of a printed line's darkness is noise beside it. */
const FAINT = 0.1;
/** Every so many pixels along a line its profile is taken: some eighty times. */
const PROFILE_STEP = 29;
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

/** The printed lines of a picture, with their bands. */
export interface Printed {
  rulings: Rulings;
  bands: Band[];
}

/** @param votes those of the picture */
export function printedOf(image: GrayImage, votes: { across: Votes; down: Votes }, pxPerMm: number): Printed {
  const rulings = findRulings(image, votes, pxPerMm);
  return { rulings, bands: bandsOf(image, rulings, pxPerMm) };
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
  const curve = Array.from({ length: 2 * reach + 1 }, (_, i) => medianOfBytes(seen(i - reach)) ?? 0);
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
