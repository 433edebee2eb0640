import { holes } from './image/holes.ts';
import type { Hole } from './image/holes.ts';
import type { Ink } from './ink.ts';
import { boxMm, pointMm } from './layout/frame.ts';
import type { Layout } from './layout.ts';
import { measuresOf } from './measures/table.ts';
import { readLine } from './reading.ts';
import { fitText } from './text/fit.ts';
import { handWidths } from './text/hand-widths.ts';
import type { LoopResult, MeasureOptions, PageInfo, PageResult, PageWarning, RulingResult } from './types.ts';
import { METHOD_VERSION } from './version.ts';
import { pageWarnings } from './trust.ts';
import { WARNINGS } from './warnings.ts';

/** White areas of fewer pixels are no loops: unevenness of the ink. */
const LEAST_LOOP_PX = 3;
/** Seed of the intervals where none is given. */
const SEED = 1;

/** The result as it is stored and shown. */
export function resultOf(
  page: PageInfo,
  ink: Ink,
  layout: Layout,
  options: MeasureOptions,
  before: PageWarning[],
): PageResult {
  const byComponent = new Map<number, Hole[]>();
  for (const hole of holes(ink.runs, ink.components, LEAST_LOOP_PX)) {
    const list = byComponent.get(hole.component) ?? [];
    list.push(hole);
    byComponent.set(hole.component, list);
  }
  const warnings = [...before];
  let texts: (string | null)[][] | null = null;
  if (options.text !== undefined && options.text.trim() !== '' && layout.lines.length > 0) {
    const fit = fitText(
      layout.words.map((words, i) => words.map((w) => (w.to - w.from) / layout.sizes[i]!)),
      options.text,
    );
    if (fit.turned) warnings.push(fit.turned === 'mirrored' ? WARNINGS.mirrored : WARNINGS.upsideDown);
    else if (fit.fits) texts = fit.texts;
    else warnings.push(WARNINGS.textUnfit);
  }
  const widths = texts ? handWidths(layout, texts, byComponent) : undefined;
  const lines = layout.lines.map((_, i) => readLine(layout, ink, i, texts?.[i] ?? null, byComponent, widths));
  const read = {
    version: METHOD_VERSION,
    page,
    lines,
    warnings,
    textFits: options.text === undefined ? null : texts !== null,
    darknessPercent: darknessOf(ink),
    rulings: rulingsOf(ink, layout),
    loops: loopsOf(layout, byComponent),
  };
  warnings.push(...pageWarnings(read, ink, layout, options));
  return { ...read, measures: measuresOf(read, options.seed ?? SEED) };
}

function darknessOf(ink: Ink): number | null {
  if (ink.runs.count === 0) return null;
  let sum = 0;
  let n = 0;
  ink.levels.half.forEach((half, t) => {
    if (half === 0) return;
    sum += 1 - ink.levels.ink[t]! / Math.max(1, ink.levels.paper[t]!);
    n += 1;
  });
  return n === 0 ? null : (100 * sum) / n;
}

/** Printed lines on the page, mm. */
function rulingsOf(ink: Ink, layout: Layout): RulingResult[] {
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
    return { kind: line.filled < 0.85 ? 'dashed' : 'line', from, to };
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
function loopsOf(layout: Layout, byComponent: ReadonlyMap<number, readonly Hole[]>): LoopResult[] {
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
