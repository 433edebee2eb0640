import { binderHoles } from './binder-holes.ts';
import { CORNER_MARK } from '../sheet/corner-marks.ts';
import type { Ink } from '../image/ink.ts';
import type { Piece } from '../image/wasm/fast-outlines.ts';
import type { GrayImage } from '../types.ts';
import type { Frame } from '../lines/frame.ts';
import { plainOutlines } from './outlines.ts';
import type { InkMap } from './run-map.ts';

/** One connected piece of ink with its outline from above and below. */
export interface Blob {
  component: number;
  /** Extent in picture pixels; right and bottom are one past the last. */
  left: number;
  right: number;
  top: number;
  bottom: number;
  area: number;
  /** The blob's runs, as indices into the lists of `InkMap`. */
  firstRun: number;
  runCount: number;
  /** Highest and lowest edge of the ink in each column, as `v` of the page in pixels, between pixels by gray level. */
  upper: Float32Array;
  lower: Float32Array;
  /** Extent on the page in pixels. */
  u0: number;
  u1: number;
  v0: number;
  v1: number;
}

/** A solid square between these shares of a corner mark's side, filled to this share of its box (a turn enlarges it), is one. */
const LEAST_MARK = 0.85;
const LARGEST_MARK = 1.25;
const SOLID_MARK = 0.75;

/**
 * Blobs of the components that are writing by their place and size.
 * @param smallest least area, pixels
 * @param rim ink that touches an edge of the picture and reaches in no further than this is left out, pixels
 */
export function blobsOf(
  image: GrayImage,
  ink: Ink,
  frame: Frame,
  map: InkMap,
  starts: Int32Array,
  smallest: number,
  rim: number,
): Blob[] {
  const { components } = ink;
  // A corner mark that the picture holds without the other three. A letter in felt pen may be as black, but not there.
  const isMark = (c: number): boolean => {
    const [left, right] = [components.left[c]!, components.right[c]!];
    const [top, bottom] = [components.top[c]!, components.bottom[c]!];
    const [wide, high] = [right - left, bottom - top];
    const side = CORNER_MARK.sideMm * frame.pxPerMm;
    const corner = 2 * CORNER_MARK.insetMm * frame.pxPerMm;
    return (
      Math.min(wide, high) > LEAST_MARK * side &&
      Math.max(wide, high) < LARGEST_MARK * side &&
      components.area[c]! > SOLID_MARK * wide * high &&
      Math.min(right, image.width - left) < corner &&
      Math.min(bottom, image.height - top) < corner
    );
  };
  const inside = (c: number): boolean =>
    (components.left[c]! > 1 || components.right[c]! > rim) &&
    (components.top[c]! > 1 || components.bottom[c]! > rim) &&
    (components.right[c]! < image.width - 1 || components.left[c]! < image.width - rim) &&
    (components.bottom[c]! < image.height - 1 || components.top[c]! < image.height - rim);
  const isHole = binderHoles(components, image.width, frame.pxPerMm);
  const pieces: (Piece & { component: number })[] = [];
  let columns = 0;
  for (let c = 0; c < components.count; c += 1) {
    const [left, right, top, bottom] = [
      components.left[c]!,
      components.right[c]!,
      components.top[c]!,
      components.bottom[c]!,
    ];
    if (components.area[c]! < smallest || !inside(c) || isMark(c) || isHole(c)) continue;
    if (ink.isCrossing(left, top, right, bottom)) continue;
    const [firstRun, runCount] = [starts[c]!, starts[c + 1]! - starts[c]!];
    pieces.push({ component: c, left, right, firstRun, runCount, at: 2 * columns });
    columns += right - left;
  }
  const { outlines, extents } =
    ink.outliner?.draw(pieces, columns, frame, map.drawnIn) ?? plainOutlines(image, ink, frame, map, pieces, columns);
  return pieces.map(({ component, left, right, firstRun, runCount, at }, p) => {
    const lower = at + right - left;
    return {
      component,
      left,
      right,
      top: components.top[component]!,
      bottom: components.bottom[component]!,
      area: components.area[component]!,
      firstRun,
      runCount,
      upper: outlines.subarray(at, lower),
      lower: outlines.subarray(lower, lower + right - left),
      u0: extents[4 * p]!,
      u1: extents[4 * p + 1]!,
      v0: extents[4 * p + 2]!,
      v1: extents[4 * p + 3]!,
    };
  });
}

/** Extent on the page of several blobs, pixels. */
export function extentOf(own: readonly { blob: Blob }[]): { u0: number; u1: number; v0: number; v1: number } {
  let u0 = Infinity;
  let u1 = -Infinity;
  let v0 = Infinity;
  let v1 = -Infinity;
  for (const { blob } of own) {
    u0 = Math.min(u0, blob.u0);
    u1 = Math.max(u1, blob.u1);
    v0 = Math.min(v0, blob.v0);
    v1 = Math.max(v1, blob.v1);
  }
  return { u0, u1, v0, v1 };
}
