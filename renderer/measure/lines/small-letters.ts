import { X_HEIGHT_BAND } from './letter-tops.ts';
import type { LetterTop } from './letter-tops.ts';
import { allTops } from './line-tops.ts';
import type { Layout } from './page-layout.ts';
import { withLines } from './page-layout.ts';
import { pageModel, smallChance } from './page-model.ts';

/** The layout with the sizes of the page's model, where lines were read by other tops than those of small letters. */
export function resized(layout: Layout): Layout {
  const model = pageModel(layout.lines, topsByLine(layout));
  if (!model) return layout;
  const lines = layout.lines.map((line, i) => {
    const off = model.level + model.offsets[i]!;
    if (Math.abs(off) < X_HEIGHT_BAND) return line;
    const moved = { ...line, trend: { ...line.trend, level: line.trend.level + off } };
    return { ...moved, tops: allTops(moved, layout.lists) };
  });
  return lines.every((line, i) => line === layout.lines[i]) ? layout : withLines(layout, lines);
}

/** Tops of small letters by line, from left to right, also the very low and high ones, as the page's model tells them. */
export function smallTops(layout: Layout): LetterTop[][] {
  const { lines } = layout;
  const tops = topsByLine(layout);
  const model = pageModel(lines, tops);
  return tops.map((own, i) => (model ? own.filter((top) => smallChance(model, lines[i]!, i, top) > 0.5) : own));
}

function topsByLine({ lines, lists }: Layout): LetterTop[][] {
  return lines.map((line) => allTops(line, lists).sort((a, b) => a.u - b.u));
}
