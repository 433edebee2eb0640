import type { GrayImage } from '../types.ts';

/** Width of a strip in pixels: narrow enough that a line turned by 3 degrees stays within 4 rows. */
export const STRIP = 64;
/** Every second pixel of a strip votes. */
const EVERY = 2;
/** Largest possible count of votes in a cell. */
export const FULL = STRIP / EVERY;
/** A printed line is darker than the paper on both sides by at least this many gray levels. */
export const VOTE_DIP = 14;
/** Distance to the paper looked at, mm: beyond the edge of a line of up to 0.7 mm. */
const BESIDE_MM = 0.55;

/** Votes for thin dark lines: `values[strip * length + at]` pixels of the strip are darker than both sides. */
export interface Votes {
  strips: number;
  /** Number of places across: rows for lines that run across the page, columns for lines that run down. */
  length: number;
  values: Uint8Array;
}

/** How far beside a pixel the paper is looked at, pixels. */
export function besidePx(pxPerMm: number): number {
  return Math.max(2, Math.round(BESIDE_MM * pxPerMm));
}

/** Counts, in strips of 64 pixels, the pixels that are darker than the paper above and below (or left and right). */
export function rulingVotes(image: GrayImage, pxPerMm: number): { across: Votes; down: Votes } {
  const { width, height, data } = image;
  const beside = besidePx(pxPerMm);
  const across: Votes = votes(Math.floor(width / STRIP), height);
  const down: Votes = votes(Math.floor(height / STRIP), width);
  for (let y = beside; y < height - beside; y += 1) {
    const row = y * width;
    const above = row - beside * width;
    const below = row + beside * width;
    for (let s = 0; s < across.strips; s += 1) {
      let count = 0;
      for (let x = s * STRIP, end = x + STRIP; x < end; x += EVERY) {
        const limit = data[row + x]! + VOTE_DIP;
        if (data[above + x]! >= limit && data[below + x]! >= limit) count += 1;
      }
      across.values[s * height + y] = count;
    }
    const strip = Math.floor(y / STRIP);
    if (y % EVERY !== 0 || strip >= down.strips) continue;
    const base = strip * width;
    for (let x = beside; x < width - beside; x += 1) {
      const limit = data[row + x]! + VOTE_DIP;
      if (data[row + x - beside]! >= limit && data[row + x + beside]! >= limit)
        down.values[base + x] = down.values[base + x]! + 1;
    }
  }
  return { across, down };
}

function votes(strips: number, length: number): Votes {
  return { strips, length, values: new Uint8Array(strips * length) };
}
