import type { Baseline } from './baseline-fit.ts';
import type { Extreme } from './extremes.ts';
import type { Blob } from '../pieces/ink-pieces.ts';
import { sizeAt } from './letter-tops.ts';
import type { LetterTop } from './letter-tops.ts';
import { FLAT, JOINED_WIDTH } from './line-work.ts';
import type { LineBlob, LineWork } from './line-work.ts';
import { traceAt } from './trace.ts';

/** Tops of joined writing closer than this many x-heights belong to one letter. */
const SAME_LETTER = 0.45;
/** … when the taller is at most this much taller: more is an ascender beside a small letter. */
const SAME_HEIGHT = 1.14;
/** A bottom this many x-heights below the baseline hangs. */
const HANGING = 0.27;
/** Ink narrower than this many x-heights is a bare stem. */
const NARROW = 0.55;

/** Heights of the tops of a line above its baseline: the highest of a single letter, all of joined letters. */
export function topsOf(
  own: readonly LineBlob[],
  baseline: Baseline,
  lists: readonly Extreme[][],
  xHeight: number | ((u: number) => number),
): LetterTop[] {
  const cos = Math.cos(Math.atan(baseline.straight.slope));
  const joined: LetterTop[] = [];
  const single: LetterTop[] = [];
  for (const { blob, index, from, to } of own) {
    const size = typeof xHeight === 'number' ? xHeight : xHeight((blob.u0 + blob.u1) / 2);
    const many = to - from > JOINED_WIDTH * size;
    let highest: LetterTop | null = null;
    const several: LetterTop[] = [];
    for (const extreme of lists[index]!) {
      if (extreme.kind !== 'top') continue;
      const height = (traceAt(baseline.curve, extreme.u) - extreme.v) * cos;
      if (many) several.push({ u: extreme.u, height, joined: true });
      else if (!highest || highest.height < height) highest = { u: extreme.u, height, joined: false };
    }
    if (many) joined.push(...tallest(several, SAME_LETTER * size));
    // A dot or a comma has no top of a letter: its ink is too flat.
    // Letters that hang (g p q y) are no small letters either.
    const hangs = blob.v1 - traceAt(baseline.curve, (blob.u0 + blob.u1) / 2) > HANGING * size;
    if (highest && blob.v1 - blob.v0 > FLAT * size && !hangs && !isDotted(blob, own, size)) single.push(highest);
  }
  return [...joined, ...single];
}

/** All tops of a line, those of joins as well. */
export function allTops({ blobs, baseline, trend }: LineWork, lists: readonly Extreme[][]): LetterTop[] {
  return topsOf(blobs, baseline, lists, (u) => sizeAt(trend, u));
}

/** A narrow stem with a dot over it: i and j are no small letters, their stems differ from hand to hand. */
function isDotted(stem: Blob, own: readonly LineBlob[], size: number): boolean {
  if (stem.u1 - stem.u0 > NARROW * size) return false;
  const middle = (stem.u0 + stem.u1) / 2;
  return own.some(
    ({ blob }) =>
      blob.v1 < stem.v0 &&
      blob.v1 - blob.v0 < FLAT * size * 1.3 &&
      Math.abs((blob.u0 + blob.u1) / 2 - middle) < 0.5 * size,
  );
}

/** Tops of joined writing without the lower ones close to a taller one: humps and entries of the same letter. */
function tallest(tops: LetterTop[], reach: number): LetterTop[] {
  return tops.filter(
    (top) =>
      !tops.some(
        (other) =>
          other.height > top.height && other.height < SAME_HEIGHT * top.height && Math.abs(other.u - top.u) < reach,
      ),
  );
}
