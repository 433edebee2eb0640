import type { Point } from './homography.ts';
import type { SmallPicture } from './small-picture.ts';

/** Light on the sheet falls off by less than this share over two small pixels, even at a shadow's edge. */
const FALL_OFF = 0.14;

/** Pixels of the small picture that belong to the sheet: 1 in `mask`, `count` in all. */
export interface BrightPiece {
  mask: Uint8Array;
  count: number;
}

/** Fills what touches the seeds by a side and passes; marks it in `mask` and answers it with the seeds. */
function flooded(mask: Uint8Array, width: number, seeds: number[], passes: (i: number) => boolean): number[] {
  for (const i of seeds) mask[i] = 1;
  for (let k = 0; k < seeds.length; k += 1) {
    const i = seeds[k]!;
    const x = i % width;
    for (const j of [x > 0 ? i - 1 : -1, x < width - 1 ? i + 1 : -1, i - width, i + width]) {
      if (j < 0 || j >= mask.length || mask[j] || !passes(j)) continue;
      mask[j] = 1;
      seeds.push(j);
    }
  }
  return seeds;
}

/** The largest piece at least as bright as `cut`, with what lies inside it. */
export function largestBright({ width, height, values }: SmallPicture, cut: number): BrightPiece {
  const seen = new Uint8Array(values.length);
  let best: number[] = [];
  for (let start = 0; start < values.length; start += 1) {
    if (seen[start] || values[start]! < cut) continue;
    const piece = flooded(seen, width, [start], (j) => values[j]! >= cut);
    if (piece.length > best.length) best = piece;
  }
  const mask = new Uint8Array(values.length);
  for (const i of best) mask[i] = 1;
  return { mask, count: filled(mask, width, height) };
}

/** The piece grown over paper in shadow: over pixels that are hardly darker than all around them. */
export function grownTo(mask: Uint8Array, small: SmallPicture): BrightPiece {
  const { width, height, values } = small;
  const grown = mask.slice();
  const around = brightestAround(small);
  const seeds: number[] = [];
  for (let i = 0; i < grown.length; i += 1) if (grown[i]) seeds.push(i);
  flooded(grown, width, seeds, (j) => values[j]! >= (1 - FALL_OFF) * around[j]!);
  return { mask: grown, count: filled(grown, width, height) };
}

/** Brightest value within two small pixels. */
function brightestAround({ width, values }: SmallPicture): Float32Array {
  const along = values.slice();
  for (let i = 0; i < values.length; i += 1) {
    const x = i % width;
    for (let d = Math.max(-2, -x); d <= Math.min(2, width - 1 - x); d += 1)
      along[i] = Math.max(along[i]!, values[i + d]!);
  }
  const result = along.slice();
  for (let i = 0; i < values.length; i += 1)
    for (let d = -2; d <= 2; d += 1) {
      const j = i + d * width;
      if (j >= 0 && j < values.length) result[i] = Math.max(result[i]!, along[j]!);
    }
  return result;
}

/** Fills what lies between the first and last pixel of each row (writing is dark too); answers the count. */
function filled(mask: Uint8Array, width: number, height: number): number {
  let count = 0;
  for (let y = 0; y < height; y += 1) {
    let first = -1;
    let last = -1;
    for (let x = 0; x < width; x += 1)
      if (mask[y * width + x]) {
        if (first < 0) first = x;
        last = x;
      }
    if (first < 0) continue;
    mask.fill(1, y * width + first, y * width + last + 1);
    count += last - first + 1;
  }
  return count;
}

/** The sheet's outermost points along the diagonals: top left, top right, bottom right, bottom left. */
export function roughCorners(mask: Uint8Array, { width, height }: SmallPicture): Point[] {
  const best = [Infinity, -Infinity, -Infinity, Infinity];
  const corners: Point[] = [0, 1, 2, 3].map(() => ({ x: 0, y: 0 }));
  for (let y = 0; y < height; y += 1)
    for (let x = 0; x < width; x += 1) {
      if (!mask[y * width + x]) continue;
      const sum = x + y;
      const difference = x - y;
      if (sum < best[0]!) [best[0], corners[0]] = [sum, { x, y }];
      if (difference > best[1]!) [best[1], corners[1]] = [difference, { x, y }];
      if (sum > best[2]!) [best[2], corners[2]] = [sum, { x, y }];
      if (difference < best[3]!) [best[3], corners[3]] = [difference, { x, y }];
    }
  return corners;
}
