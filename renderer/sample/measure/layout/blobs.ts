import type { Components } from '../image/components.ts';
import { halfAt } from '../image/contrast.ts';
import type { Levels } from '../image/contrast.ts';
import type { Runs } from '../image/runs.ts';
import type { GrayImage } from '../types.ts';
import { vOf } from './frame.ts';
import type { Frame } from './frame.ts';

/** One connected piece of ink with its outline from above and below. */
export interface Blob {
  component: number;
  /** Extent in picture pixels; right and bottom are one past the last. */
  left: number;
  right: number;
  top: number;
  bottom: number;
  area: number;
  /** The blob's runs, as indices into `InkMap.order`. */
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

/** Runs sorted by component, so that a blob's ink can be walked. */
export interface InkMap {
  runs: Runs;
  /** Run indices grouped by component, rows ascending within each. */
  order: Int32Array;
  /** Row of each run. */
  rowOf: Int32Array;
}

/** Groups the runs by component. */
export function inkMap(runs: Runs, components: Components): { map: InkMap; starts: Int32Array } {
  const starts = new Int32Array(components.count + 1);
  for (let r = 0; r < runs.count; r += 1) starts[components.labels[r]! + 1] = starts[components.labels[r]! + 1]! + 1;
  for (let c = 0; c < components.count; c += 1) starts[c + 1] = starts[c + 1]! + starts[c]!;
  const next = starts.slice();
  const order = new Int32Array(runs.count);
  const rowOf = new Int32Array(runs.count);
  for (let y = 0; y < runs.height; y += 1)
    for (let r = runs.rows[y]!; r < runs.rows[y + 1]!; r += 1) {
      rowOf[r] = y;
      const label = components.labels[r]!;
      order[next[label]!] = r;
      next[label] = next[label]! + 1;
    }
  return { map: { runs, order, rowOf }, starts };
}

/** Blobs of the components that are large enough. `smallest` is an area in pixels. */
export function blobsOf(
  image: GrayImage,
  levels: Levels,
  frame: Frame,
  components: Components,
  map: InkMap,
  starts: Int32Array,
  smallest: number,
): Blob[] {
  const blobs: Blob[] = [];
  for (let c = 0; c < components.count; c += 1) {
    if (components.area[c]! < smallest) continue;
    const blob: Blob = {
      component: c,
      left: components.left[c]!,
      right: components.right[c]!,
      top: components.top[c]!,
      bottom: components.bottom[c]!,
      area: components.area[c]!,
      firstRun: starts[c]!,
      runCount: starts[c + 1]! - starts[c]!,
      upper: new Float32Array(0),
      lower: new Float32Array(0),
      u0: 0,
      u1: 0,
      v0: 0,
      v1: 0,
    };
    outline(blob, image, levels, frame, map);
    blobs.push(blob);
  }
  return blobs;
}

/** Fills the outline and the extent on the page. */
export function outline(blob: Blob, image: GrayImage, levels: Levels, frame: Frame, map: InkMap): void {
  const span = blob.right - blob.left;
  const first = new Int32Array(span).fill(-1);
  const last = new Int32Array(span);
  for (let i = blob.firstRun; i < blob.firstRun + blob.runCount; i += 1) {
    const r = map.order[i]!;
    const y = map.rowOf[r]!;
    for (let x = map.runs.from[r]! - blob.left, end = map.runs.to[r]! - blob.left; x < end; x += 1) {
      if (first[x]! < 0) first[x] = y;
      last[x] = y;
    }
  }
  blob.upper = new Float32Array(span);
  blob.lower = new Float32Array(span);
  for (let k = 0; k < span; k += 1) {
    const x = blob.left + k;
    const top = first[k]! < 0 ? blob.top : first[k]!;
    const bottom = first[k]! < 0 ? blob.top : last[k]!;
    blob.upper[k] = vOf(frame, x + 0.5, top + 0.5 - edgeBeyond(image, levels, x, top, -1));
    blob.lower[k] = vOf(frame, x + 0.5, bottom + 0.5 + edgeBeyond(image, levels, x, bottom, 1));
  }
  const extent = extentAlong(blob, map, frame.angle, frame.originX, frame.originY);
  blob.u0 = extent.from;
  blob.u1 = extent.to;
  blob.v0 = Math.min(...blob.upper);
  blob.v1 = Math.max(...blob.lower);
}

/** Distance from the center of the last ink pixel to where the gray level crosses halfway, in pixels (0 to 1). */
function edgeBeyond(image: GrayImage, levels: Levels, x: number, y: number, step: -1 | 1): number {
  const beyond = y + step;
  if (beyond < 0 || beyond >= image.height) return 0.5;
  const half = halfAt(levels, x, y);
  const inside = image.data[y * image.width + x]!;
  const outside = image.data[beyond * image.width + x]!;
  if (inside > half || outside <= half) return 0.5;
  return (half - inside) / (outside - inside);
}

/** Extent of a blob along a direction (radians, counter-clockwise), in pixels from an origin. */
export function extentAlong(
  blob: Blob,
  map: InkMap,
  angle: number,
  originX: number,
  originY: number,
): { from: number; to: number } {
  const cos = Math.cos(angle);
  const sin = Math.sin(angle);
  let from = Infinity;
  let to = -Infinity;
  for (let i = blob.firstRun; i < blob.firstRun + blob.runCount; i += 1) {
    const r = map.order[i]!;
    const down = (map.rowOf[r]! + 0.5 - originY) * sin;
    const a = (map.runs.from[r]! - originX) * cos - down;
    const b = (map.runs.to[r]! - originX) * cos - down;
    if (a < from) from = a;
    if (b > to) to = b;
  }
  return { from, to };
}
