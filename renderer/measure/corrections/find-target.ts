import type { LineWork } from '../lines/line-work.ts';
import { lineSize } from '../lines/line-reading.ts';
import { traceAt } from '../lines/trace.ts';
import type { Layout } from '../lines/page-layout.ts';
import type { PointMm } from '../types.ts';

/** A point of the page in the pixels that the layout works in. */
export interface Spot {
  u: number;
  v: number;
  /** Place along the baselines' own axis, comparable with `from` and `to` of words of a line. */
  along(line: LineWork): number;
}

/** A correction's point; corrections are kept in mm of the page. */
export function spotOf(layout: Layout, point: PointMm): Spot {
  const { frame } = layout;
  const u = point.xMm * frame.pxPerMm;
  const v = point.yMm * frame.pxPerMm;
  const x = frame.originX + u * frame.cos + v * frame.sin;
  const y = frame.originY - u * frame.sin + v * frame.cos;
  return {
    u,
    v,
    along(line) {
      const direction = frame.angle - Math.atan(line.baseline.straight.slope);
      return (x - frame.originX) * Math.cos(direction) - (y - frame.originY) * Math.sin(direction);
    },
  };
}

/** The line whose body lies nearest to a spot, within two x-heights; -1 when there is none. */
export function lineAt(layout: Layout, spot: Spot): number {
  let best = -1;
  let least = Infinity;
  layout.lines.forEach((line, i) => {
    const size = lineSize(line);
    const off = Math.abs(spot.v - (traceAt(line.baseline.curve, spot.u) - 0.5 * size));
    const first = line.blobs[0]!.blob.u0;
    const last = Math.max(...line.blobs.map((b) => b.blob.u1));
    const aside = Math.max(0, first - spot.u, spot.u - last);
    const cost = off + aside;
    if (off < 2 * size && cost < least) [least, best] = [cost, i];
  });
  return best;
}

/** The word of a line nearest to a spot; -1 for a line without words. */
export function wordAt(layout: Layout, line: number, spot: Spot): number {
  const along = spot.along(layout.lines[line]!);
  let best = -1;
  let least = Infinity;
  layout.words[line]!.forEach((word, k) => {
    const off = Math.max(0, word.from - along, along - word.to);
    if (off < least) [least, best] = [off, k];
  });
  return best;
}
