import type { Ink } from './ink.ts';
import type { Layout } from './layout.ts';
import { lineSize } from './layout/line-work.ts';
import type { ReadPage } from './measures/measure.ts';
import { median } from './numbers.ts';
import type { MeasureOptions, PageWarning } from './types.ts';
import { SCALE_TOLERANCE } from './sheet.ts';
import { WARNINGS } from './warnings.ts';

/** Small letters under this height in pixels are too coarse (issue: text under 12 px). */
const LEAST_PX = 12;
/** Fewer words than this say nothing about spacing or change of size. */
const LEAST_WORDS = 5;

/** What a page that was measured is questioned for. */
export function pageWarnings(read: ReadPage, ink: Ink, layout: Layout, options: MeasureOptions): PageWarning[] {
  const warnings: PageWarning[] = [];
  const words = read.lines.reduce((sum, line) => sum + line.words.length, 0);
  if (words === 0) return [WARNINGS.blank];
  if (words < LEAST_WORDS) warnings.push(WARNINGS.fewWords);
  const size = median(layout.lines.map(lineSize))!;
  if (size < LEAST_PX) warnings.push(WARNINGS.smallText);
  const pitch = rulingPitch(read);
  if (pitch !== null && options.rulingMm !== undefined && Math.abs(pitch / options.rulingMm - 1) > SCALE_TOLERANCE)
    warnings.push(WARNINGS.scaleRuling);
  return warnings;
}

/** Usual distance of the solid printed lines, mm; null with fewer than three. */
export function rulingPitch(read: ReadPage): number | null {
  const heights = read.rulings
    .filter((ruling) => ruling.kind === 'line' || ruling.kind === 'grid')
    .filter((ruling) => Math.abs(ruling.to.yMm - ruling.from.yMm) < Math.abs(ruling.to.xMm - ruling.from.xMm))
    .map((ruling) => (ruling.from.yMm + ruling.to.yMm) / 2)
    .sort((a, b) => a - b);
  if (heights.length < 3) return null;
  return median(heights.slice(1).map((y, i) => y - heights[i]!));
}
