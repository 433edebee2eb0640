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

/** Open chain of runs, one a row. */
interface Chain {
  from: number;
  to: number;
  rows: number[];
  middles: number[];
  lengths: number[];
  taken: boolean;
}

/**
 * Upright strokes of a blob: chains of short runs, each touching exactly one run in the row before.
 * @param usual usual run length, pixels
 * @param least least height of a stroke, pixels
 */
export function strokesOf(blob: Blob, map: InkMap, usual: number, least: number): Stroke[] {
  const strokes: Stroke[] = [];
  let open: Chain[] = [];
  const end = blob.firstRun + blob.runCount;
  let i = blob.firstRun;
  let lastRow = -2;
  const close = (chain: Chain): void => {
    const stroke = straight(chain, least);
    if (stroke) strokes.push(stroke);
  };
  while (i < end) {
    const row = map.rowOf[map.order[i]!]!;
    if (row !== lastRow + 1) {
      open.forEach(close);
      open = [];
    }
    const next: Chain[] = [];
    for (const chain of open) chain.taken = false;
    for (; i < end && map.rowOf[map.order[i]!] === row; i += 1) {
      const r = map.order[i]!;
      const from = map.runs.from[r]!;
      const to = map.runs.to[r]!;
      const touching = open.filter((chain) => chain.from < to && chain.to > from);
      const one = touching.length === 1 ? touching[0]! : null;
      if (to - from > WIDEST * usual) continue;
      if (one && !one.taken) {
        one.taken = true;
        append(one, row, from, to);
        next.push(one);
      } else next.push(append({ from, to, rows: [], middles: [], lengths: [], taken: true }, row, from, to));
    }
    for (const chain of open) if (!chain.taken) close(chain);
    open = next;
    lastRow = row;
  }
  open.forEach(close);
  return strokes;
}

function append(chain: Chain, row: number, from: number, to: number): Chain {
  chain.from = from;
  chain.to = to;
  chain.rows.push(row + 0.5);
  chain.middles.push((from + to) / 2);
  chain.lengths.push(to - from);
  return chain;
}

/** The chain without its ends (there the pen turns), as a straight stroke; null when it is short or bent. */
function straight(chain: Chain, least: number): Stroke | null {
  const n = chain.rows.length;
  if (n < least) return null;
  const skip = Math.round(n * 0.12);
  let [sy, sx, syy, sxy, length, count] = [0, 0, 0, 0, 0, 0];
  for (let k = skip; k < n - skip; k += 1) {
    const y = chain.rows[k]! - chain.rows[0]!;
    sy += y;
    sx += chain.middles[k]!;
    syy += y * y;
    sxy += y * chain.middles[k]!;
    length += chain.lengths[k]!;
    count += 1;
  }
  const det = count * syy - sy * sy;
  if (count < 4 || det === 0) return null;
  const slope = (count * sxy - sy * sx) / det;
  const intercept = (sx - slope * sy) / count;
  let square = 0;
  for (let k = skip; k < n - skip; k += 1)
    square += (chain.middles[k]! - intercept - slope * (chain.rows[k]! - chain.rows[0]!)) ** 2;
  // A third of a pixel is the unevenness of pixels themselves.
  if (Math.sqrt(square / count) > Math.max(0.4, STRAIGHT * n) || Math.abs(slope) > STEEPEST) return null;
  return {
    x: sx / count,
    y: chain.rows[0]! + n / 2,
    height: n,
    width: (length / count) * Math.cos(Math.atan(slope)),
    slant: Math.atan(-slope),
  };
}
