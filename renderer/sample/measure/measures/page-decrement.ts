import { interval } from '../bootstrap.ts';
import { theilSen } from '../numbers.ts';
import type { Measure } from './measure.ts';
import { NOTHING, wordsOfLine } from './measure.ts';
import { median } from '../numbers.ts';

/** A line's median needs this many letters. */
const LEAST_LETTERS = 3;

export const pageDecrement: Measure = {
  code: 'page-decrement',
  name: 'Change of size down the page, per line',
  unit: '% per line',
  direction: 'none',
  source: 'Theil-Sen slope of ln(median x-height of the line) over line number (Theil 1950, Sen 1968). No cut-off.',
  how: 'Theil-Sen slope over the lines, interval over lines',
  compute: (page, chance) => {
    const points = page.lines
      .map((line, index) => ({ index, heights: wordsOfLine(line).flatMap((word) => word.xHeightsMm) }))
      .filter(({ heights }) => heights.length >= LEAST_LETTERS)
      .map(({ index, heights }) => ({ index, ln: Math.log(median(heights)!) }));
    if (points.length < 3) return { ...NOTHING, n: points.length };
    const percent = (drawn: readonly { index: number; ln: number }[]): number | null => {
      const slope =
        theilSen(
          drawn.map((p) => p.index),
          drawn.map((p) => p.ln),
        )?.slope ?? null;
      return slope === null ? null : 100 * (Math.exp(slope) - 1);
    };
    return { value: percent(points), n: points.length, ...interval(points, percent, chance), spread: null };
  },
};
