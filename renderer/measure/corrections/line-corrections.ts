import { asRead, baselineOf } from '../lines/baseline-fit.ts';
import { extentAlong } from '../pieces/run-map.ts';
import type { LineBlob, LineWork } from '../lines/line-work.ts';
import { isFlat, isJoined, lineSize, sized } from '../lines/line-reading.ts';
import type { Trace } from '../lines/trace.ts';
import { traceAt } from '../lines/trace.ts';
import type { Layout } from '../lines/page-layout.ts';
import type { Correction } from '../measure-options.ts';
import { lineAt, spotOf } from './find-target.ts';

/** Bottoms within this many x-heights of a baseline drawn by hand stand on it. */
const NEAR = 0.3;

/** Applies what was corrected about lines: split, joined, moved. Answers new lines; the order from top to bottom stays. */
export function correctLines(layout: Layout, corrections: readonly Correction[]): LineWork[] {
  let lines = layout.lines;
  for (const correction of corrections) {
    const now = { ...layout, lines };
    if (correction.kind === 'split-line') lines = splitLine(now, correction);
    else if (correction.kind === 'join-lines') lines = joinLines(now, correction);
    else if (correction.kind === 'move-baseline') lines = moveBaseline(now, correction);
  }
  return lines;
}

/** Parts a line at a place: what lies left of it and what lies right of it become lines of their own. */
function splitLine(layout: Layout, correction: Correction & { kind: 'split-line' }): LineWork[] {
  const spot = spotOf(layout, correction.at);
  const i = lineAt(layout, spot);
  if (i < 0) return layout.lines;
  const line = layout.lines[i]!;
  const left = line.blobs.filter(({ blob }) => (blob.u0 + blob.u1) / 2 < spot.u);
  const right = line.blobs.filter(({ blob }) => (blob.u0 + blob.u1) / 2 >= spot.u);
  if (left.length === 0 || right.length === 0) return layout.lines;
  const parts = [left, right].map((blobs) => remade(layout, line, blobs)).filter((part) => part !== null);
  return [...layout.lines.slice(0, i), ...parts, ...layout.lines.slice(i + 1)];
}

/** Makes one line of two. */
function joinLines(layout: Layout, correction: Correction & { kind: 'join-lines' }): LineWork[] {
  const a = lineAt(layout, spotOf(layout, correction.at));
  const b = lineAt(layout, spotOf(layout, correction.with));
  if (a < 0 || b < 0 || a === b) return layout.lines;
  const [first, second] = [layout.lines[a]!, layout.lines[b]!];
  const joined = remade(layout, lineSize(first) ? first : second, [...first.blobs, ...second.blobs]);
  if (!joined) return layout.lines;
  return layout.lines.map((line, i) => (i === Math.min(a, b) ? joined : line)).filter((_, i) => i !== Math.max(a, b));
}

/** Reads a line anew from some of the ink. */
function remade(layout: Layout, like: LineWork, own: readonly LineBlob[]): LineWork | null {
  const size = lineSize(like);
  if (like.baseline.byHand)
    return sized({ trace: like.trace, baseline: like.baseline, blobs: [...own] }, layout.lists, size);
  const members = new Set(own.map((b) => b.index));
  const bottoms = layout.extremes.filter(
    (e) => e.kind === 'bottom' && members.has(e.blob) && !isFlat(layout.blobs[e.blob]!, size),
  );
  const trace = feetTrace(bottoms.map((f) => [f.u, f.v] as const));
  const baseline = trace && baselineOf(trace, bottoms, 0, size, (bottom) => isJoined(layout.blobs[bottom.blob]!, size));
  if (!trace || !baseline) return null;
  const direction = layout.frame.angle - Math.atan(baseline.straight.slope);
  const blobs = own
    .map((b) => ({ ...b, ...extentAlong(b.blob, layout.map, direction, layout.frame.originX, layout.frame.originY) }))
    .sort((p, q) => p.from - q.from);
  return sized({ trace, baseline, blobs }, layout.lists, size);
}

/** A straight course through bottoms: from the median of the left half to that of the right half. */
function feetTrace(bottoms: readonly (readonly [number, number])[]): Trace | null {
  if (bottoms.length === 0) return null;
  const sorted = [...bottoms].sort((a, b) => a[0] - b[0]);
  const middle = Math.ceil(sorted.length / 2);
  const center = (list: typeof sorted): [number, number] => {
    const vs = list.map((f) => f[1]).sort((a, b) => a - b);
    return [list.reduce((sum, f) => sum + f[0], 0) / list.length, vs[vs.length >> 1]!];
  };
  const [u0, v0] = center(sorted.slice(0, middle));
  const [u1, v1] = sorted.length > 1 ? center(sorted.slice(middle)) : [u0 + 1, v0];
  const slope = u1 > u0 ? (v1 - v0) / (u1 - u0) : 0;
  const span = Math.max(1, sorted[sorted.length - 1]![0] - sorted[0]![0]);
  const start = v0 + slope * (sorted[0]![0] - u0);
  return { u0: sorted[0]![0], step: span, v: Float64Array.of(start, start + slope * span), slope };
}

/** Takes the straight line between two points as the baseline; heights and distances follow it. */
function moveBaseline(layout: Layout, correction: Correction & { kind: 'move-baseline' }): LineWork[] {
  const i = lineAt(layout, spotOf(layout, correction.at));
  if (i < 0) return layout.lines;
  const line = layout.lines[i]!;
  const px = layout.frame.pxPerMm;
  const [left, right] =
    correction.left.xMm <= correction.right.xMm
      ? [correction.left, correction.right]
      : [correction.right, correction.left];
  const span = Math.max(1, (right.xMm - left.xMm) * px);
  const slope = ((right.yMm - left.yMm) * px) / span;
  const curve: Trace = { u0: left.xMm * px, step: span, v: Float64Array.of(left.yMm * px, right.yMm * px), slope };
  const size = lineSize(line);
  const members = new Set(line.blobs.map((b) => b.index));
  const bottoms = layout.extremes.filter(
    (e) => e.kind === 'bottom' && members.has(e.blob) && Math.abs(e.v - traceAt(curve, e.u)) < NEAR * size,
  );
  let square = 0;
  for (const bottom of bottoms) square += (bottom.v - traceAt(curve, bottom.u)) ** 2;
  const baseline = {
    curve,
    straight: { slope, intercept: left.yMm * px - slope * left.xMm * px },
    bottoms,
    rms: bottoms.length === 0 ? 0 : Math.sqrt(square / bottoms.length),
    byHand: asRead(line.baseline),
  };
  const moved = sized({ ...line, baseline }, layout.lists, size);
  return layout.lines.map((other, k) => (k === i ? moved : other));
}
