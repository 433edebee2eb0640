import type { Ink } from '../image/ink.ts';
import type { RunLists } from '../image/wasm/fast-outlines.ts';
import type { GrayImage } from '../types.ts';
import { edgeBeyond } from './stroke-edge.ts';

/** The runs of each component side by side, rows ascending, so that a blob's ink can be walked. */
export interface InkMap extends Omit<RunLists, 'edges'> {
  /** Distance from the center of a run's first (-1) or last (1) pixel outward to the edge of the ink, pixels. */
  edge(run: number, side: -1 | 1): number;
  /** How far the ends of strokes lie inside for the picture's blur, pixels. */
  drawnIn: number;
}

/** The runs of a piece of ink, as indices into the lists of `InkMap`. */
interface PieceRuns {
  firstRun: number;
  runCount: number;
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

/** Groups the runs by component. */
export function inkMap(image: GrayImage, ink: Ink, strokePx: number): { map: InkMap; starts: Int32Array } {
  const { runs, components } = ink;
  const starts = new Int32Array(components.count + 1);
  for (let r = 0; r < runs.count; r += 1) starts[components.labels[r]! + 1] = starts[components.labels[r]! + 1]! + 1;
  for (let c = 0; c < components.count; c += 1) starts[c + 1] = starts[c + 1]! + starts[c]!;
  const next = starts.slice();
  const { from, to, row, edges } = ink.outliner?.lists(runs.count) ?? {
    from: new Int32Array(runs.count),
    to: new Int32Array(runs.count),
    row: new Int32Array(runs.count),
    edges: new Float64Array(2 * runs.count),
  };
  for (let y = 0; y < runs.height; y += 1)
    for (let r = runs.rows[y]!; r < runs.rows[y + 1]!; r += 1) {
      const label = components.labels[r]!;
      const at = next[label]!;
      next[label] = at + 1;
      from[at] = runs.from[r]!;
      to[at] = runs.to[r]!;
      row[at] = y;
    }
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

/** Room for the runs of a blob that may reach furthest to either side: used again by the next one. */
let nearLeft = new Int32Array(1024);
let nearRight = new Int32Array(1024);

/** Extent of a blob along a direction (radians, counter-clockwise), in pixels from an origin, between pixels by gray. */
export function extentAlong(
  blob: PieceRuns,
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
