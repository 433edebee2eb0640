import { GRID_MS } from '../prepare/butterworth.ts';
import type { Motion } from '../prepare/motion.ts';

/** A stretch in which the pen stayed within a small box, in grid points, both included. */
interface Still {
  from: number;
  to: number;
}

/** Smallest value of a moving stretch, kept as a queue of candidates; with `sign` -1 the largest. */
class Extreme {
  private readonly list: Int32Array;
  private head = 0;
  private tail = 0;
  private readonly values: Float64Array;
  private readonly sign: 1 | -1;

  constructor(values: Float64Array, sign: 1 | -1) {
    this.values = values;
    this.sign = sign;
    this.list = new Int32Array(values.length);
  }

  /** The extreme if the point `i` came in. */
  with(i: number): number {
    const own = this.values[i]!;
    if (this.head === this.tail) return own;
    const kept = this.values[this.list[this.head]!]!;
    return (own - kept) * this.sign < 0 ? own : kept;
  }

  add(i: number): void {
    while (this.tail > this.head && (this.values[this.list[this.tail - 1]!]! - this.values[i]!) * this.sign >= 0)
      this.tail -= 1;
    this.list[this.tail++] = i;
  }

  leave(before: number): void {
    while (this.head < this.tail && this.list[this.head]! < before) this.head += 1;
  }
}

/** For every grid point the last one up to which the box of the path keeps its diagonal within `reachMm`. */
function reaches(x: Float64Array, y: Float64Array, reachMm: number): Int32Array {
  const n = x.length;
  const out = new Int32Array(n);
  const [left, right] = [new Extreme(x, 1), new Extreme(x, -1)];
  const [top, bottom] = [new Extreme(y, 1), new Extreme(y, -1)];
  const all = [left, right, top, bottom];
  let end = 0;
  for (let start = 0; start < n; start += 1) {
    for (const each of all) each.leave(start);
    while (end < n && Math.hypot(right.with(end) - left.with(end), bottom.with(end) - top.with(end)) <= reachMm) {
      for (const each of all) each.add(end);
      end += 1;
    }
    out[start] = end - 1;
  }
  return out;
}

/** The longest stretches first, none over another, each at least `seconds` long. */
function longestFirst(last: Int32Array, seconds: number): Still[] {
  const least = (seconds * 1000) / GRID_MS - 1e-9;
  const found: Still[] = [];
  const open: Still[] = [{ from: 0, to: last.length - 1 }];
  for (let part = open.pop(); part; part = open.pop()) {
    if (part.to - part.from < least) continue;
    let best: Still = { from: 0, to: -1 };
    for (let i = part.from; i <= part.to; i += 1) {
      const to = Math.min(last[i]!, part.to);
      if (to - i > best.to - best.from) best = { from: i, to };
    }
    if (best.to - best.from < least) continue;
    found.push(best);
    open.push({ from: part.from, to: best.from - 1 }, { from: best.to + 1, to: part.to });
  }
  return found.sort((a, b) => a.from - b.from);
}

/**
 * Where the pen rested on the paper: the box of its filtered path stays within a diagonal for a time.
 * @returns times on the clock of the file, ms
 */
export function restsOf(
  motions: readonly Motion[],
  reachMm: number,
  seconds: number,
): { fromMs: number; toMs: number }[] {
  return motions.flatMap(({ x, y, startMs }) =>
    (x.length - 1) * GRID_MS < seconds * 1000
      ? []
      : longestFirst(reaches(x, y, reachMm), seconds).map(({ from, to }) => ({
          fromMs: startMs + from * GRID_MS,
          toMs: startMs + to * GRID_MS,
        })),
  );
}
