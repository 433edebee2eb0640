import type { Hole } from './image/holes.ts';
import { SOLID } from './image/printed-rulings.ts';
import type { Ink } from './image/ink.ts';
import { boxMm, pointMm } from './lines/frame.ts';
import type { Layout } from './lines/page-layout.ts';
import type { LoopResult, RulingResult } from './types.ts';

/** Printed lines on the page, mm. */
export function rulingsOf(ink: Ink, layout: Layout): RulingResult[] {
  const { frame } = layout;
  const point = (x: number, y: number): RulingResult['from'] =>
    pointMm(
      frame,
      (x - frame.originX) * frame.cos - (y - frame.originY) * frame.sin,
      (x - frame.originX) * frame.sin + (y - frame.originY) * frame.cos,
    );
  const across = ink.rulings.across.map((line): RulingResult => {
    const from = point(line.from, line.intercept + line.slope * line.from);
    const to = point(line.to, line.intercept + line.slope * line.to);
    return { kind: line.filled < SOLID ? 'dashed' : 'line', from, to };
  });
  const kind = ink.rulings.down.length > 3 ? 'grid' : 'margin';
  const down = ink.rulings.down.map((line): RulingResult => {
    const from = point(line.intercept + line.slope * line.from, line.from);
    const to = point(line.intercept + line.slope * line.to, line.to);
    return { kind, from, to };
  });
  return [...across, ...down];
}

/** Closed loops of ink that belongs to lines. */
export function loopsOf(layout: Layout, byComponent: ReadonlyMap<number, readonly Hole[]>): LoopResult[] {
  const { frame } = layout;
  return layout.lines.flatMap((line) =>
    line.blobs.flatMap(({ blob }) =>
      (byComponent.get(blob.component) ?? []).map((hole) => {
        const [x, y] = [hole.left - frame.originX, hole.top - frame.originY];
        const u = x * frame.cos - y * frame.sin;
        const v = x * frame.sin + y * frame.cos;
        return { box: boxMm(frame, u, v, u + hole.right - hole.left, v + hole.bottom - hole.top) };
      }),
    ),
  );
}
