import type { Ink } from '../image/ink.ts';
import type { Outlines, Piece } from '../image/wasm/fast-outlines.ts';
import { vOf } from '../lines/frame.ts';
import type { Frame } from '../lines/frame.ts';
import type { GrayImage } from '../types.ts';
import { extentAlong } from './run-map.ts';
import type { InkMap } from './run-map.ts';
import { edgeBeyond } from './stroke-edge.ts';

/** Room for the first and last rows of a piece's columns: used again by the next one. */
let rows: [Int32Array, Int32Array] = [new Int32Array(512), new Int32Array(512)];

function rowsFor(span: number): [Int32Array, Int32Array] {
  if (rows[0].length < span) rows = [new Int32Array(2 * span), new Int32Array(2 * span)];
  rows[0].fill(-1, 0, span);
  return rows;
}

/**
 * Outlines of pieces of ink, and how far they reach on the page: the reference of image/wasm/outlines.as.
 * @param columns of all pieces together
 */
export function plainOutlines(
  image: GrayImage,
  ink: Ink,
  frame: Frame,
  map: InkMap,
  pieces: readonly Piece[],
  columns: number,
): Outlines {
  // One list for all outlines: thousands of short ones are slow to make.
  const outlines = new Float32Array(2 * columns);
  const extents = new Float64Array(4 * pieces.length);
  pieces.forEach(({ left, right, firstRun, runCount, at }, p) => {
    const span = right - left;
    const [first, last] = rowsFor(span);
    for (let i = firstRun; i < firstRun + runCount; i += 1) {
      const y = map.row[i]!;
      for (let x = map.from[i]! - left, end = map.to[i]! - left; x < end; x += 1) {
        if (first[x]! < 0) first[x] = y;
        last[x] = y;
      }
    }
    let v0 = Infinity;
    let v1 = -Infinity;
    for (let k = 0; k < span; k += 1) {
      const x = left + k;
      const top = first[k]!;
      const bottom = last[k]!;
      // Only where the outline may turn is the edge looked for between pixels: its flanks are no tops or bottoms.
      const before = k > 0 ? k - 1 : k;
      const after = k + 1 < span ? k + 1 : k;
      const isTop = top <= first[before]! && top <= first[after]!;
      const isBottom = bottom >= last[before]! && bottom >= last[after]!;
      const above = isTop ? edgeBeyond(image, ink, x, top, 0, -1) : 0.5;
      const below = isBottom ? edgeBeyond(image, ink, x, bottom, 0, 1) : 0.5;
      const high = vOf(frame, x + 0.5, top + 0.5 - above);
      const low = vOf(frame, x + 0.5, bottom + 0.5 + below);
      outlines[at + k] = high;
      outlines[at + span + k] = low;
      if (high < v0) v0 = high;
      if (low > v1) v1 = low;
    }
    const { from, to } = extentAlong({ firstRun, runCount }, map, frame.angle, frame.originX, frame.originY);
    extents.set([from, to, v0, v1], 4 * p);
  });
  return { outlines, extents };
}
