import { ERASED, paperAt } from '../image/contrast.ts';
import type { Ink } from '../image/ink.ts';
import type { Print } from '../image/ruling-erase.ts';
import type { GrayImage } from '../types.ts';

/** How far into a stroke its darkest place is looked for, and how far out its edge, pixels. */
const INWARD = 4;
const OUTWARD = 2;
/** How far out the paper beside a stroke is looked at, pixels, and how much brighter than it that must be. */
const BESIDE = 4;
const LEAST_RISE = 20;
/** How far out it is looked for whether a printed line was taken out there, pixels. */
const PRINT_NEAR = 3;
/** How far out a printed line that was taken out is looked at, pixels. */
const PRINT_BESIDE = 9;

/**
 * Distance from the center of the last ink pixel outward to where the gray level lies halfway between the paper and
 * the darkest place of this very stroke, pixels: a thin stroke is paler than a thick one.
 */
export function edgeBeyond(image: GrayImage, ink: Ink, x: number, y: number, dx: number, dy: number): number {
  const { data, width, height } = image;
  const step = dy * width + dx;
  const at = y * width + x;
  const room = dx === 0 ? (dy < 0 ? y : height - 1 - y) : dx < 0 ? x : width - 1 - x;
  const depth = dx === 0 ? (dy < 0 ? height - 1 - y : y) : dx < 0 ? width - 1 - x : x;
  if (room === 0) return 0.5;
  // Mean of the two darkest: the darkest alone is mostly noise.
  let darkest = data[at]!;
  let second = 255;
  for (let k = 1; k <= Math.min(INWARD, depth); k += 1) {
    const g = data[at - k * step]!;
    if (g > darkest + 6 && k > 2) break;
    second = Math.min(second, Math.max(g, darkest));
    darkest = Math.min(darkest, g);
  }
  const inside = (darkest + Math.min(second, (darkest + data[at]!) / 2)) / 2;
  const plain = paperAt(ink.levels, x, y);
  if (isPrinted(ink.bitmap, at, step, room)) {
    const print = ink.print(x, y, dx + dy > 0 ? 1 : -1, dx === 0);
    if (print) return edgeOverPrint(data, at, step, room, inside, plain, print);
  }
  // What is printed right beside the stroke is the paper there: a line that was taken out, or any other.
  let brightest = 0;
  for (let k = 1; k <= Math.min(BESIDE, room); k += 1) brightest = Math.max(brightest, data[at + k * step]!);
  const print = ink.bitmap[at + step] === ERASED ? printBeside(data, ink.bitmap, at, step, room) : plain;
  const depthOfPrint = dy === 0 ? ink.printed.down : ink.printed.across;
  const bare = Math.min(plain, Math.max(print, plain - depthOfPrint));
  const paper = Math.min(bare, Math.max(brightest, darkest + LEAST_RISE));
  const half = (paper + inside) / 2;
  for (let k = 0; k < Math.min(OUTWARD, room); k += 1) {
    const before = data[at + k * step]!;
    const after = data[at + (k + 1) * step]!;
    if (after > half) return k + (before >= half ? 0 : (half - before) / (after - before));
  }
  return OUTWARD;
}

/** Whether a printed line was taken out right beside a place. */
function isPrinted(bitmap: Uint8Array, at: number, step: number, room: number): boolean {
  for (let k = 1; k <= Math.min(PRINT_NEAR, room); k += 1) if (bitmap[at + k * step] === ERASED) return true;
  return false;
}

/**
 * The same beside a solid printed line whose place is known: the paper there is as dark as the blurred line makes it, at
 * each pixel anew. A bottom that stops a hair above the line is not drawn in by it.
 */
function edgeOverPrint(
  data: Uint8Array,
  at: number,
  step: number,
  room: number,
  inside: number,
  plain: number,
  print: Print,
): number {
  let before = 0;
  for (let k = 0; k <= Math.min(OUTWARD, room); k += 1) {
    const paper = Math.max(inside + LEAST_RISE, plain - print(k));
    const beyond = data[at + k * step]! - (paper + inside) / 2;
    if (beyond > 0) return k === 0 ? 0 : k - 1 + before / (before - beyond);
    before = beyond;
  }
  return OUTWARD;
}

/** Gray of what was taken out beside a place, its darkest quarter: print, or paper between its dashes. */
function printBeside(data: Uint8Array, bitmap: Uint8Array, at: number, step: number, room: number): number {
  let count = 0;
  for (let k = 1; k <= Math.min(PRINT_BESIDE, room) && bitmap[at + k * step] === ERASED; k += 1) {
    // The first is partly ink: it counts alone only.
    if (k === 2) count = 0;
    // Sorted as they come: there are a few only.
    const level = data[at + k * step]!;
    let place = count;
    for (; place > 0 && beside[place - 1]! > level; place -= 1) beside[place] = beside[place - 1]!;
    beside[place] = level;
    count += 1;
  }
  return beside[count >> 2]!;
}

const beside = new Uint8Array(PRINT_BESIDE);
