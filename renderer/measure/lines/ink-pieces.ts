import { binderHoles } from './binder-holes.ts';
import { CORNER_MARK } from '../sheet/corner-marks.ts';
import type { Ink } from '../image/ink.ts';
import type { GrayImage } from '../types.ts';
import { vOf } from './frame.ts';
import type { Frame } from './frame.ts';
import { edgeBeyond } from './stroke-edge.ts';

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

/** The runs of each component side by side, rows ascending, so that a blob's ink can be walked. */
export interface InkMap {
  /** First column of each run, the column after its last, and its row. */
  from: Int32Array;
  to: Int32Array;
  row: Int32Array;
  /** Distance from the center of a run's first (-1) or last (1) pixel outward to the edge of the ink, pixels. */
  edge(run: number, side: -1 | 1): number;
  /** How far the ends of strokes lie inside for the picture's blur, pixels. */
  drawnIn: number;
}

/** A solid square between these shares of a corner mark's side, filled to this share of its box (a turn enlarges it), is one. */
const LEAST_MARK = 0.85;
const LARGEST_MARK = 1.25;
const SOLID_MARK = 0.75;

/** Groups the runs by component. */
export function inkMap(image: GrayImage, ink: Ink, strokePx: number): { map: InkMap; starts: Int32Array } {
  const { runs, components } = ink;
  const starts = new Int32Array(components.count + 1);
  for (let r = 0; r < runs.count; r += 1) starts[components.labels[r]! + 1] = starts[components.labels[r]! + 1]! + 1;
  for (let c = 0; c < components.count; c += 1) starts[c + 1] = starts[c + 1]! + starts[c]!;
  const next = starts.slice();
  const from = new Int32Array(runs.count);
  const to = new Int32Array(runs.count);
  const row = new Int32Array(runs.count);
  for (let y = 0; y < runs.height; y += 1)
    for (let r = runs.rows[y]!; r < runs.rows[y + 1]!; r += 1) {
      const label = components.labels[r]!;
      const at = next[label]!;
      next[label] = at + 1;
      from[at] = runs.from[r]!;
      to[at] = runs.to[r]!;
      row[at] = y;
    }
  // Edges are asked for by the page, by the line and by the strokes: 0 where not looked for yet.
  const edges = new Float64Array(2 * runs.count);
  const edge = (run: number, side: -1 | 1): number => {
    const at = side < 0 ? 2 * run : 2 * run + 1;
    if (edges[at] === 0) edges[at] = edgeBeyond(image, ink, side < 0 ? from[run]! : to[run]! - 1, row[run]!, side, 0);
    return edges[at]!;
  };
  return {
    map: {
      from,
      to,
      row,
      edge,
      drawnIn: DRAWN_IN * Math.max(0, (ink.blurPx ?? 0) - LEAST_BLUR) * Math.min(1, Math.max(0, strokePx - THIN) / 2),
    },
    starts,
  };
}

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
  const blobs: Blob[] = [];
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
  // One list for all outlines: thousands of short ones are slow to make.
  let columns = 0;
  for (let c = 0; c < components.count; c += 1) columns += components.right[c]! - components.left[c]!;
  const outlines = new Float32Array(2 * columns);
  let drawn = 0;
  for (let c = 0; c < components.count; c += 1) {
    if (components.area[c]! < smallest || !inside(c) || isMark(c) || isHole(c)) continue;
    if (ink.isCrossing(components.left[c]!, components.top[c]!, components.right[c]!, components.bottom[c]!)) continue;
    const wide = components.right[c]! - components.left[c]!;
    const blob: Blob = {
      component: c,
      left: components.left[c]!,
      right: components.right[c]!,
      top: components.top[c]!,
      bottom: components.bottom[c]!,
      area: components.area[c]!,
      firstRun: starts[c]!,
      runCount: starts[c + 1]! - starts[c]!,
      upper: outlines.subarray(drawn, drawn + wide),
      lower: outlines.subarray(drawn + wide, drawn + 2 * wide),
      u0: 0,
      u1: 0,
      v0: 0,
      v1: 0,
    };
    drawn += 2 * wide;
    outline(blob, image, ink, frame, map);
    blobs.push(blob);
  }
  return blobs;
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

/** Room for the first and last rows of a blob's columns: used again by the next one. */
let rows: [Int32Array, Int32Array] = [new Int32Array(512), new Int32Array(512)];

function rowsFor(span: number): [Int32Array, Int32Array] {
  if (rows[0].length < span) rows = [new Int32Array(2 * span), new Int32Array(2 * span)];
  rows[0].fill(-1, 0, span);
  return rows;
}

/** Fills the outline and the extent on the page. */
function outline(blob: Blob, image: GrayImage, ink: Ink, frame: Frame, map: InkMap): void {
  const span = blob.right - blob.left;
  const [first, last] = rowsFor(span);
  for (let i = blob.firstRun; i < blob.firstRun + blob.runCount; i += 1) {
    const y = map.row[i]!;
    for (let x = map.from[i]! - blob.left, end = map.to[i]! - blob.left; x < end; x += 1) {
      if (first[x]! < 0) first[x] = y;
      last[x] = y;
    }
  }
  const { upper, lower } = blob;
  blob.v0 = Infinity;
  blob.v1 = -Infinity;
  for (let k = 0; k < span; k += 1) {
    const x = blob.left + k;
    const top = first[k]!;
    const bottom = last[k]!;
    // Only where the outline may turn is the edge looked for between pixels: its flanks are no tops or bottoms.
    const before = k > 0 ? k - 1 : k;
    const after = k + 1 < span ? k + 1 : k;
    const isHead = top <= first[before]! && top <= first[after]!;
    const isFoot = bottom >= last[before]! && bottom >= last[after]!;
    const above = isHead ? edgeBeyond(image, ink, x, top, 0, -1) : 0.5;
    const below = isFoot ? edgeBeyond(image, ink, x, bottom, 0, 1) : 0.5;
    const high = vOf(frame, x + 0.5, top + 0.5 - above);
    const low = vOf(frame, x + 0.5, bottom + 0.5 + below);
    upper[k] = high;
    lower[k] = low;
    if (high < blob.v0) blob.v0 = high;
    if (low > blob.v1) blob.v1 = low;
  }
  const extent = extentAlong(blob, map, frame.angle, frame.originX, frame.originY);
  blob.u0 = extent.from;
  blob.u1 = extent.to;
}

/** Runs that end within this of the outermost one may reach furthest once their edges are looked at, pixels. */
const NEARLY = 0.6;
/**
 * Blur draws the ends of strokes in: at half contrast they lie this part of the blur inside, beyond the least blur of any
 * picture, pixels. Read off drawn pages of four hands with 0, 0.7 and 1.4 px of blur; straight flanks stay in place.
 */
const DRAWN_IN = 0.1;
const LEAST_BLUR = 0.55;
/** Strokes up to this many pixels show nothing of it; from two more on all of it. */
const THIN = 3;

/** Room for the runs of a blob that may reach furthest to either side: used again by the next one. */
let nearLeft = new Int32Array(1024);
let nearRight = new Int32Array(1024);

/** Extent of a blob along a direction (radians, counter-clockwise), in pixels from an origin, between pixels by gray. */
export function extentAlong(
  blob: Blob,
  map: InkMap,
  angle: number,
  originX: number,
  originY: number,
): { from: number; to: number } {
  const cos = Math.cos(angle);
  const sin = Math.sin(angle);
  const { from: left, to: right, row } = map;
  const end = blob.firstRun + blob.runCount;
  if (nearLeft.length < blob.runCount) {
    nearLeft = new Int32Array(2 * blob.runCount);
    nearRight = new Int32Array(2 * blob.runCount);
  }
  let least = Infinity;
  let most = -Infinity;
  let lefts = 0;
  let rights = 0;
  for (let i = blob.firstRun; i < end; i += 1) {
    const down = (row[i]! + 0.5 - originY) * sin;
    const a = (left[i]! - originX) * cos - down;
    const b = (right[i]! - originX) * cos - down;
    if (a < least + NEARLY) {
      nearLeft[lefts] = i;
      lefts += 1;
      if (a < least) least = a;
    }
    if (b > most - NEARLY) {
      nearRight[rights] = i;
      rights += 1;
      if (b > most) most = b;
    }
  }
  // Edges between pixels, where a run reaches within a pixel of the outermost one.
  let from = Infinity;
  let to = -Infinity;
  for (let k = 0; k < lefts; k += 1) {
    const i = nearLeft[k]!;
    const down = (row[i]! + 0.5 - originY) * sin;
    if ((left[i]! - originX) * cos - down < least + NEARLY)
      from = Math.min(from, (left[i]! + 0.5 - map.edge(i, -1) - originX) * cos - down);
  }
  for (let k = 0; k < rights; k += 1) {
    const i = nearRight[k]!;
    const down = (row[i]! + 0.5 - originY) * sin;
    if ((right[i]! - originX) * cos - down > most - NEARLY)
      to = Math.max(to, (right[i]! - 0.5 + map.edge(i, 1) - originX) * cos - down);
  }
  return { from: from - map.drawnIn, to: to + map.drawnIn };
}
