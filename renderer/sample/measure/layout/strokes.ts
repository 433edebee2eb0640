import type { Blob, InkMap } from './blobs.ts';

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

/** Open chain of runs, one a row, from `first` on. Its lists are longer than `count` where it was used before. */
interface Chain {
  from: number;
  to: number;
  first: number;
  count: number;
  middles: Float64Array;
  lengths: Float64Array;
  taken: boolean;
}

/** Closed chains wait here to be used again: a page has some ten thousand of them. */
const spare: Chain[] = [];
let spares = 0;
/** Open chains of a row and of the next. */
const rooms: [Chain[], Chain[]] = [[], []];

/**
 * Upright strokes of a blob: chains of short runs, each touching exactly one run in the row before.
 * @param usual usual run length, pixels
 * @param least least height of a stroke, pixels
 */
export function strokesOf(blob: Blob, map: InkMap, usual: number, least: number): Stroke[] {
  const { order, rowOf, runs } = map;
  const strokes: Stroke[] = [];
  // Lists with a count of their own: emptying an array gives its room away, row after row.
  let [open, next] = rooms;
  let opens = 0;
  const end = blob.firstRun + blob.runCount;
  let i = blob.firstRun;
  let lastRow = -2;
  const close = (chain: Chain): void => {
    const stroke = straight(chain, least, map);
    if (stroke) strokes.push(stroke);
    spare[spares] = chain;
    spares += 1;
  };
  while (i < end) {
    const row = rowOf[order[i]!]!;
    if (row !== lastRow + 1) {
      for (let k = 0; k < opens; k += 1) close(open[k]!);
      opens = 0;
    }
    for (let k = 0; k < opens; k += 1) open[k]!.taken = false;
    let nexts = 0;
    for (; i < end && rowOf[order[i]!] === row; i += 1) {
      const from = runs.from[order[i]!]!;
      const to = runs.to[order[i]!]!;
      if (to - from > WIDEST * usual) continue;
      let one: Chain | null = null;
      let touching = 0;
      for (let k = 0; k < opens; k += 1) {
        const chain = open[k]!;
        if (chain.from >= to || chain.to <= from) continue;
        one = chain;
        touching += 1;
      }
      if (!one || touching > 1 || one.taken) one = opened(row);
      append(one, from, to);
      next[nexts] = one;
      nexts += 1;
    }
    for (let k = 0; k < opens; k += 1) if (!open[k]!.taken) close(open[k]!);
    [open, next] = [next, open];
    opens = nexts;
    lastRow = row;
  }
  for (let k = 0; k < opens; k += 1) close(open[k]!);
  return strokes;
}

function opened(row: number): Chain {
  const chain =
    spares > 0 ? spare[--spares]! : { from: 0, to: 0, first: 0, count: 0, middles: ROOM, lengths: ROOM, taken: true };
  chain.first = row;
  chain.count = 0;
  return chain;
}

/** A chain starts without room of its own. */
const ROOM = new Float64Array(0);

function append(chain: Chain, from: number, to: number): void {
  const { count } = chain;
  if (count === chain.middles.length) {
    chain.middles = longer(chain.middles);
    chain.lengths = longer(chain.lengths);
  }
  chain.from = from;
  chain.to = to;
  chain.middles[count] = (from + to) / 2;
  chain.lengths[count] = to - from;
  chain.count = count + 1;
  chain.taken = true;
}

function longer(list: Float64Array): Float64Array {
  const copy = new Float64Array(Math.max(64, 2 * list.length));
  copy.set(list);
  return copy;
}

/** The chain without its ends (there the pen turns), as a straight stroke; null when it is short or bent. */
function straight(chain: Chain, least: number, map: InkMap): Stroke | null {
  const n = chain.count;
  if (n < least) return null;
  const skip = Math.round(n * 0.12);
  let [sy, sx, syy, sxy, count] = [0, 0, 0, 0, 0];
  for (let k = skip; k < n - skip; k += 1) {
    sy += k;
    sx += chain.middles[k]!;
    syy += k * k;
    sxy += k * chain.middles[k]!;
    count += 1;
  }
  const det = count * syy - sy * sy;
  if (count < 4 || det === 0) return null;
  const slope = (count * sxy - sy * sx) / det;
  const intercept = (sx - slope * sy) / count;
  let square = 0;
  for (let k = skip; k < n - skip; k += 1) square += (chain.middles[k]! - intercept - slope * k) ** 2;
  // A third of a pixel is the unevenness of pixels themselves.
  if (Math.sqrt(square / count) > Math.max(0.4, STRAIGHT * n) || Math.abs(slope) > STEEPEST) return null;
  return {
    x: sx / count,
    y: chain.first + 0.5 + n / 2,
    height: n,
    width: widthAlong(chain, skip, map) * Math.cos(Math.atan(slope)),
    slant: Math.atan(-slope),
  };
}

/** Mean length of some runs of a chain, between pixels by gray. */
function widthAlong({ first, count, middles, lengths }: Chain, skip: number, map: InkMap): number {
  const step = Math.max(1, Math.floor((count - 2 * skip) / LOOKED_AT));
  let [sum, looked] = [0, 0];
  for (let k = skip; k < count - skip; k += step) {
    const from = middles[k]! - lengths[k]! / 2;
    const last = from + lengths[k]! - 1;
    sum += lengths[k]! - 1 + map.edge(from, first + k, -1) + map.edge(last, first + k, 1);
    looked += 1;
  }
  return sum / looked;
}
