import type { LetterTop } from './letter-tops.ts';
import { allTops } from './line-tops.ts';
import type { Layout } from './page-layout.ts';
import { withLines } from './page-layout.ts';
import type { LineWork } from './line-work.ts';
import { pageModel, smallChance } from './page-model.ts';
import type { PageModel } from './page-model.ts';

/** Sizes nearer to those of the page's model than this (ln) stay: it knows them no better. */
const WORTH = 0.03;

/** The layout with the sizes of the page's model, where lines were read by other tops than those of small letters. */
export function resized(layout: Layout): Layout {
  const { model } = modelled(layout);
  if (!model) return layout;
  const lines = layout.lines.map((line, i) => {
    const off = model.level + model.offsets[i]!;
    if (Math.abs(off) < WORTH) return line;
    const moved = { ...line, trend: { ...line.trend, level: line.trend.level + off } };
    return { ...moved, tops: allTops(moved, layout.lists) };
  });
  return lines.every((line, i) => line === layout.lines[i]) ? layout : withLines(layout, lines);
}

/** Tops of small letters by line, from left to right, also the very low and high ones, as the page's model tells them. */
export function smallTops(layout: Layout): LetterTop[][] {
  const { lines } = layout;
  const { tops, model } = modelled(layout);
  return tops.map((own, i) => (model ? own.filter((top) => smallChance(model, lines[i]!, i, top) > 0.5) : own));
}

interface Modelled {
  tops: LetterTop[][];
  model: PageModel | null;
}

/** Models by the lines that they are of: a layout that kept its lines keeps its model. */
const known = new WeakMap<readonly LineWork[], Modelled & { lists: Layout['lists'] }>();

function modelled({ lines, lists }: Layout): Modelled {
  const before = known.get(lines);
  if (before && before.lists === lists) return before;
  const tops = lines.map((line) => allTops(line, lists).sort((a, b) => a.u - b.u));
  const made = { tops, model: pageModel(lines, tops), lists };
  known.set(lines, made);
  return made;
}
