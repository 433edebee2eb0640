import { X_HEIGHT_BAND } from './letter-tops.ts';
import type { Head } from './letter-tops.ts';
import { allHeads } from './line-reading.ts';
import type { Layout } from './page-layout.ts';
import { withLines } from './page-layout.ts';
import { pageModel, smallChance } from './page-model.ts';

/** The layout with the sizes of the page's model, where lines were read by other heads than those of small letters. */
export function resized(layout: Layout): Layout {
  const model = pageModel(layout.lines, headsByLine(layout));
  if (!model) return layout;
  const lines = layout.lines.map((line, i) => {
    const off = model.level + model.offsets[i]!;
    if (Math.abs(off) < X_HEIGHT_BAND) return line;
    const moved = { ...line, trend: { ...line.trend, level: line.trend.level + off } };
    return { ...moved, heads: allHeads(moved, layout.lists) };
  });
  return lines.every((line, i) => line === layout.lines[i]) ? layout : withLines(layout, lines);
}

/** Heads of small letters by line, from left to right, also the very low and high ones, as the page's model tells them. */
export function smallHeads(layout: Layout): Head[][] {
  const { lines } = layout;
  const heads = headsByLine(layout);
  const model = pageModel(lines, heads);
  return heads.map((own, i) => (model ? own.filter((head) => smallChance(model, lines[i]!, i, head) > 0.5) : own));
}

function headsByLine({ lines, lists }: Layout): Head[][] {
  return lines.map((line) => allHeads(line, lists).sort((a, b) => a.u - b.u));
}
