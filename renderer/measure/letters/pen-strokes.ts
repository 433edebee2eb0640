import type { Blob } from '../pieces/ink-pieces.ts';
import type { InkMap } from '../pieces/run-map.ts';

/** A straight piece of pen stroke that runs up or down. Pixels; slant in radians from upright, + leans right. */
export interface Stroke {
  /** Picture column of its middle. */
  x: number;
  y: number;
  height: number;
  width: number;
  slant: number;
}

/** Runs longer than this many usual runs belong to bars, bowls' tops and joins. */
const WIDEST = 2.2;
/** A stroke is straight when its middle line stays this close to a straight line, as a share of its height. */
const STRAIGHT = 0.035;
/** From this slant on (radians, 45 degrees) a stroke is no longer an upright one. */
const STEEPEST = 0.8;

/** Runs of a stroke whose edges are looked for between pixels. */
const LOOKED_AT = 6;

/** Room for the chains of a blob's runs: used again by the next one. */
let above = new Int32Array(1024);
let counts = new Int32Array(1024);
/** The runs of the chain at hand and their middles, from the top. */
let chain = new Int32Array(256);
let middles = new Float64Array(256);

/**
 * Upright strokes of a blob: chains of short runs, each touching exactly one run in the row before.
 * @param usual usual run length, pixels
 * @param least least height of a stroke, pixels
 */
export function strokesOf(blob: Blob, map: InkMap, usual: number, least: number): Stroke[] {
  if (blob.bottom - blob.top < least) return [];
  const first = blob.firstRun;
  linkRuns(blob, map, WIDEST * usual);
  const strokes: Stroke[] = [];
  for (let k = 0; k < blob.runCount; k += 1) {
    const count = counts[k]!;
    if (count === 0 || count < least) continue;
    if (chain.length < count) [chain, middles] = [new Int32Array(2 * count), new Float64Array(2 * count)];
    for (let at = k, left = count - 1; left >= 0; at = above[at]!, left -= 1) {
      const run = first + at;
      chain[left] = run;
      middles[left] = (map.from[run]! + map.to[run]!) / 2;
    }
    const stroke = straight(count, map);
    if (stroke) strokes.push(stroke);
  }
  return strokes;
}

/**
 * Links the runs of a blob to chains, run for run: `above` is the run before in its chain, `counts` how many runs the
 * chain has that ends with it; 0 where a chain goes on below, and for runs that are too long.
 */
function linkRuns(blob: Blob, { from, to, row }: InkMap, widest: number): void {
  const first = blob.firstRun;
  if (counts.length < blob.runCount)
    [above, counts] = [new Int32Array(2 * blob.runCount), new Int32Array(2 * blob.runCount)];
  // The first run that may touch from above.
  let near = first;
  for (let i = first, end = first + blob.runCount; i < end; i += 1) {
    const left = from[i]!;
    const right = to[i]!;
    const before = row[i]! - 1;
    counts[i - first] = 0;
    if (right - left > widest) continue;
    while (row[near]! < before || (row[near] === before && to[near]! <= left)) near += 1;
    let one = -1;
    let touching = 0;
    for (let a = near; row[a] === before && from[a]! < right; a += 1) {
      if (counts[a - first] === 0) continue;
      one = a - first;
      touching += 1;
    }
    // Of two runs below one, the left one goes on from it.
    const goesOn = touching === 1;
    above[i - first] = one;
    counts[i - first] = goesOn ? counts[one]! + 1 : 1;
    if (goesOn) counts[one] = 0;
  }
}

/** The chain at hand of `n` runs without its ends (there the pen turns), as a straight stroke; null when it is short or bent. */
function straight(n: number, map: InkMap): Stroke | null {
  const skip = Math.round(n * 0.12);
  let sy = 0;
  let sx = 0;
  let syy = 0;
  let sxy = 0;
  let count = 0;
  for (let k = skip; k < n - skip; k += 1) {
    sy += k;
    sx += middles[k]!;
    syy += k * k;
    sxy += k * middles[k]!;
    count += 1;
  }
  const det = count * syy - sy * sy;
  if (count < 4 || det === 0) return null;
  const slope = (count * sxy - sy * sx) / det;
  const intercept = (sx - slope * sy) / count;
  let square = 0;
  for (let k = skip; k < n - skip; k += 1) square += (middles[k]! - intercept - slope * k) ** 2;
  // A third of a pixel is the unevenness of pixels themselves.
  if (Math.sqrt(square / count) > Math.max(0.4, STRAIGHT * n) || Math.abs(slope) > STEEPEST) return null;
  return {
    x: sx / count,
    y: map.row[chain[0]!]! + 0.5 + n / 2,
    height: n,
    width: widthAlong(n, skip, map) * Math.cos(Math.atan(slope)),
    slant: Math.atan(-slope),
  };
}

/** Mean length of some runs of a chain, between pixels by gray. */
function widthAlong(count: number, skip: number, { from, to, edge }: InkMap): number {
  const step = Math.max(1, Math.floor((count - 2 * skip) / LOOKED_AT));
  let [sum, looked] = [0, 0];
  for (let k = skip; k < count - skip; k += step) {
    const run = chain[k]!;
    sum += to[run]! - from[run]! - 1 + edge(run, -1) + edge(run, 1);
    looked += 1;
  }
  return sum / looked;
}
