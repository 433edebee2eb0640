import type { Hole } from '../image/holes.ts';
import { densityOf, smoothed } from '../lines/density.ts';
import type { Density } from '../lines/density.ts';
import { sizeAt } from '../lines/letter-tops.ts';
import { traceAt } from '../lines/trace.ts';
import type { Layout } from '../lines/page-layout.ts';

/** How a page seems to lie, by its writing alone. */
export type Direction = 'upright' | 'sideways' | 'upside-down' | 'mirrored';

/** Fewer pieces of ink than this say nothing about the direction of lines. */
const LEAST_PIECES = 30;
/** Stripes and neighbors together: 173 drawn pages gave 0.01 and more upright, -0.08 and less turned by a quarter. */
const SIDEWAYS = -0.04;
/** Cell in stroke widths: the same whichever way the page lies. About two thirds of a letter. */
const CELL = 3.5;
/** Pieces asked for their neighbor; the rest of the page agrees with them. */
const ASKED = 80;
/** Least common part of two pieces' sides, as a share of the shorter, for one to lie beside or below the other. */
const FACING = 0.3;
/** A piece this much longer than wide shows the way of the line by itself: joined words. */
const LONG = 2;
/** Tall and hanging parts needed; hanging ones must outnumber tall ones by this factor (English has 4 tall to 1). */
const LEAST_PARTS = 16;
const OUTNUMBER = 1.7;
/**
 * Points and commas stand low, dots and accents high: so many times more of them upright than turned say that the page
 * lies upright although more hangs than rises, as in Cyrillic. Latin pages turned by hand: up to 3.1 times.
 */
const MARKS = { least: 6, times: 4.5 } as const;
/** Parts needed, and hanging ones for each tall one, to call a script unusual: 37 Latin pages had at most 0.55. */
const UNUSUAL = { parts: 40, hanging: 0.8 } as const;
/** A dot's size, and heights that it lies above or below, x-heights. */
const DOT = { size: 0.5, above: 1.05, below: -0.05 } as const;

/** Round letters open to one side that are needed, and the share of them that must open to the left. */
const LEAST_OPEN = 12;
const SHARE_LEFT = 0.75;

/** Whether the lines of a page run down it: by its stripes, and by where each piece of ink has its nearest neighbor. */
export function isSideways(layout: Layout): boolean {
  return layout.blobs.length >= LEAST_PIECES && stripes(layout) + neighbors(layout) < SIDEWAYS;
}

/** Lines of writing make stripes: ln of how much more the smoothed ink varies along them than along the other direction. */
function stripes(layout: Layout): number {
  const cell = Math.max(1, CELL * layout.strokePx);
  const density = densityOf(layout.blobs, layout.map, layout.frame, cell, cell);
  return Math.log(contrast(smoothed(density, 7, 0.8, 1)) / contrast(smoothed(density, 0.8, 7, 1)));
}

/** Letters stand closer in their line than lines do, joined words are long: 1 when every piece says across, -1 down. */
function neighbors({ blobs, strokePx }: Layout): number {
  const pieces = blobs.filter((b) => Math.max(b.u1 - b.u0, b.v1 - b.v0) > 2 * strokePx);
  const n = pieces.length;
  // Plain lists: all pieces are looked at for each one asked.
  const left = new Float64Array(n);
  const right = new Float64Array(n);
  const top = new Float64Array(n);
  const bottom = new Float64Array(n);
  pieces.forEach((piece, i) => {
    left[i] = piece.u0;
    right[i] = piece.u1;
    top[i] = piece.v0;
    bottom[i] = piece.v1;
  });
  const step = Math.max(1, n / ASKED);
  let across = 0;
  let down = 0;
  for (let k = 0; k < n; k += step) {
    const at = Math.floor(k);
    const [u0, u1, v0, v1] = [left[at]!, right[at]!, top[at]!, bottom[at]!];
    const width = u1 - u0;
    const height = v1 - v0;
    if (width > LONG * height) across += 1;
    if (height > LONG * width) down += 1;
    let [beside, below] = [Infinity, Infinity];
    for (let i = 0; i < n; i += 1) {
      const du = Math.max(left[i]! - u1, u0 - right[i]!);
      const dv = Math.max(top[i]! - v1, v0 - bottom[i]!);
      // Few are level with the piece, few above or below it: most are passed over at once.
      if (dv < 0) {
        if (du >= 0 && du < beside && dv < -FACING * Math.min(height, bottom[i]! - top[i]!)) beside = du;
      } else if (du < 0 && dv < below && du < -FACING * Math.min(width, right[i]! - left[i]!)) below = dv;
    }
    if (beside < below) across += 1;
    if (below < beside) down += 1;
  }
  return across + down === 0 ? 0 : (across - down) / (across + down);
}

function contrast(density: Density): number {
  let sum = 0;
  const { values } = density;
  for (let i = 0; i < values.length; i += 1) sum += values[i]! * values[i]!;
  return sum;
}

/** Direction of a page whose lines run across. */
export function directionOf(layout: Layout, holesByBlob: ReadonlyMap<number, readonly Hole[]>): Direction {
  const { tall, hanging } = parts(layout);
  // Without tall and hanging parts it is a page of figures or capitals: a 9 looks like the mirrored e.
  if (tall + hanging < LEAST_PARTS) return 'upright';
  if (hanging > OUTNUMBER * tall && !marksSayUpright(layout)) return 'upside-down';
  return isMirrored(layout, holesByBlob) ? 'mirrored' : 'upright';
}

/** Whether few letters rise and many hang, as in no Latin text: another script, or a page that lies upside down. */
export function isUnusualScript(layout: Layout): boolean {
  const { tall, hanging } = parts(layout);
  return tall + hanging >= UNUSUAL.parts && hanging > UNUSUAL.hanging * tall;
}

/** Whether points, commas and dots stand where they stand on an upright page. */
function marksSayUpright({ lines, spacings }: Layout): boolean {
  let [upright, turned] = [0, 0];
  for (const { places } of spacings)
    for (const { mark } of places) {
      if (mark === 'low') upright += 1;
      if (mark === 'high') turned += 1;
    }
  for (const line of lines)
    for (const { blob } of line.blobs) {
      const u = (blob.u0 + blob.u1) / 2;
      const size = sizeAt(line.trend, u);
      if (Math.max(blob.u1 - blob.u0, blob.v1 - blob.v0) > DOT.size * size) continue;
      const height = (traceAt(line.baseline.curve, u) - (blob.v0 + blob.v1) / 2) / size;
      if (height > DOT.above) upright += 1;
      if (height < DOT.below) turned += 1;
    }
  return upright >= MARKS.least && upright > MARKS.times * turned;
}

/** How many parts of letters rise above the small letters, and how many hang below the lines. */
function parts(layout: Layout): { tall: number; hanging: number } {
  let tall = 0;
  let hanging = 0;
  for (const line of layout.lines)
    for (const { index } of line.blobs)
      for (const extreme of layout.lists[index]!) {
        const size = sizeAt(line.trend, extreme.u);
        const height = (traceAt(line.baseline.curve, extreme.u) - extreme.v) / size;
        if (extreme.kind === 'top' && height > 1.3 && height < 2.8) tall += 1;
        if (extreme.kind === 'bottom' && height < -0.3 && height > -1.8) hanging += 1;
      }
  return { tall, hanging };
}

/** The letter e (a loop in its upper half) has ink on the left of its lower half and an opening on the right. */
function isMirrored(layout: Layout, holesByBlob: ReadonlyMap<number, readonly Hole[]>): boolean {
  let left = 0;
  let all = 0;
  for (const line of layout.lines) {
    for (const { blob, from, to } of line.blobs) {
      const own = holesByBlob.get(blob.component);
      const size = sizeAt(line.trend, (blob.u0 + blob.u1) / 2);
      const height = blob.bottom - blob.top;
      if (own?.length !== 1 || to - from > 1.4 * size || Math.abs(height / size - 1) > 0.25) continue;
      const hole = own[0]!;
      if ((hole.top + hole.bottom) / 2 > blob.top + 0.45 * height) continue;
      const offset = inkOffset(layout, blob, blob.bottom - 0.45 * height, blob.bottom - 0.22 * height);
      if (offset === null) continue;
      all += 1;
      if (offset > 0.06) left += 1;
      else if (offset > -0.06) all -= 1;
    }
  }
  return all >= LEAST_OPEN && left > SHARE_LEFT * all;
}

/** Mean place of the ink in some rows, from the blob's middle, as a share of its width; null without ink there. */
function inkOffset(layout: Layout, blob: Layout['blobs'][number], from: number, to: number): number | null {
  const { map } = layout;
  let sum = 0;
  let weight = 0;
  for (let i = blob.firstRun; i < blob.firstRun + blob.runCount; i += 1) {
    const y = map.row[i]! + 0.5;
    if (y < from || y > to) continue;
    const length = map.to[i]! - map.from[i]!;
    sum += (length * (map.from[i]! + map.to[i]!)) / 2;
    weight += length;
  }
  if (weight === 0) return null;
  return (sum / weight - (blob.left + blob.right) / 2) / (blob.right - blob.left);
}
