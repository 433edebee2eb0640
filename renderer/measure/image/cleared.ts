import type { GrayImage } from '../types.ts';

/** Columns that share one paper level: light changes little over 5 mm at 300 dpi. */
const BLOCK = 64;
/** Rows beside the band from which the paper's level is taken. */
const BESIDE = 24;
/** Share of darker pixels below the paper's level: ink covers less than a fifth of written paper. */
const PAPER_SHARE = 0.7;

/**
 * Paints the bands at top and bottom of a picture in the paper's own brightness beside them, in place.
 * @param upper height of the upper band, px
 * @param lower height of the lower band, px
 */
export function cleared(image: GrayImage, upper: number, lower: number): GrayImage {
  const top = Math.min(Math.round(upper), image.height);
  const bottom = Math.max(Math.round(image.height - lower), top);
  paint(image, 0, top, top);
  paint(image, bottom, image.height, bottom - BESIDE);
  return image;
}

function paint({ width, height, data }: GrayImage, from: number, to: number, beside: number): void {
  const first = Math.min(Math.max(beside, 0), Math.max(height - BESIDE, 0));
  for (let left = 0; left < width; left += BLOCK) {
    const right = Math.min(left + BLOCK, width);
    const level = paperLevel(data, width, left, right, first, Math.min(first + BESIDE, height));
    for (let y = from; y < to; y += 1) data.fill(level, y * width + left, y * width + right);
  }
}

function paperLevel(data: Uint8Array, width: number, left: number, right: number, from: number, to: number): number {
  const counts = new Int32Array(256);
  for (let y = from; y < to; y += 1)
    for (let x = left; x < right; x += 1) counts[data[y * width + x]!] = counts[data[y * width + x]!]! + 1;
  const wanted = PAPER_SHARE * (to - from) * (right - left);
  let seen = 0;
  for (let level = 0; level < 256; level += 1) {
    seen += counts[level]!;
    if (seen >= wanted) return level;
  }
  return 255;
}
