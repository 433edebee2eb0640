import { median } from '../../statistics/order-statistics.ts';
import type { Measure } from './measure.ts';
import { NOTHING, wordsOfLine } from './measure.ts';
import { slopeOverLines } from './slopes.ts';

/** A line's median needs this many letters. */
const LEAST_LETTERS = 3;
const LEAST_LINES = 3;

export const pageDecrement: Measure = {
  code: 'page-decrement',
  name: 'Change of size down the page, per line',
  unit: '% per line',
  direction: 'none',
  source: 'Theil-Sen slope of ln(median x-height of the line) over line number (Theil 1950, Sen 1968). No cut-off.',
  how: 'Theil-Sen slope over the lines, interval by t of least squares',
  compute: (page) => {
    const points = page.lines
      .map((line, index) => ({ index, heights: wordsOfLine(line).flatMap((word) => word.xHeightsMm) }))
      .filter(({ heights }) => heights.length >= LEAST_LETTERS)
      .map(({ index, heights }) => ({ index, value: Math.log(median(heights)!) }));
    if (points.length < LEAST_LINES) return { ...NOTHING, n: points.length };
    return slopeOverLines(points, (slope) => 100 * (Math.exp(slope) - 1));
  },
};
