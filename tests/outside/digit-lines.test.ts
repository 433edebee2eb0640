/** Real handwriting of known layout: digits of many writers laid into lines; the engine must give the layout back. */
import { expect, test } from 'vitest';
import { measurePage } from '../../renderer/measure/measure-page.ts';
import { digitPage } from './digit-page.ts';
import type { DigitPage, DigitPageSpec } from './digit-page.ts';
import { median } from '../../renderer/statistics/order-statistics.ts';
import type { PageResult } from '../../renderer/measure/types.ts';

const UNIT = 300 / 25.4;
const BASE: DigitPageSpec = {
  seed: 11,
  lines: 13,
  words: 7,
  digits: 5,
  cell: 43,
  pitch: 173,
  wordGap: 67,
  digitGap: 9,
  lnPerWord: 0,
};

async function measured(change: Partial<DigitPageSpec>): Promise<{ truth: DigitPage; result: PageResult }> {
  const truth = await digitPage({ ...BASE, ...change });
  return { truth, result: measurePage(truth.gray, { scale: { pxPerMm: UNIT, source: 'dpi' } }) };
}

test.each([
  { seed: 11 },
  { seed: 12, pitch: 151, wordGap: 83, digitGap: 7, cell: 37, words: 8 },
  { seed: 13, pitch: 211, wordGap: 97, digitGap: 12, cell: 57, lines: 11, words: 5 },
])('digits of many writers give back lines, words, pitch, gaps and height: %o', async (change) => {
  const { truth, result } = await measured(change);
  expect(result.lines.map((line) => line.words.length)).toEqual(truth.lines.map((line) => line.length));
  const feet = result.lines.map((line) => (line.baseline[line.baseline.length >> 1]?.yMm ?? NaN) * UNIT);
  const pitches = feet.slice(1).map((foot, i) => foot - (feet[i] as number));
  expect(Math.abs(median(pitches)! - truth.pitch)).toBeLessThan(0.5);
  expect(Math.max(...pitches.map((pitch) => Math.abs(pitch - truth.pitch)))).toBeLessThan(1.5);
  const pairs = result.lines.flatMap((line, i) => line.words.map((word, j) => ({ word, is: truth.lines[i]![j]! })));
  const gaps = pairs.filter(({ is }) => is.gapBefore !== null);
  const gapErrors = gaps.map(({ word, is }) => Math.abs((word.gapBeforeMm ?? Infinity) * UNIT - is.gapBefore!));
  expect(median(gapErrors)!).toBeLessThan(1);
  expect(Math.max(...gapErrors)).toBeLessThan(3);
  const heights = pairs.map(({ word, is }) => ((word.xHeightMm ?? Infinity) * UNIT) / is.height);
  expect(Math.abs(median(heights)! - 1)).toBeLessThan(0.03);
});

test.each([0, -0.0273, -0.0491])('a size change of %f per word is given back', async (lnPerWord) => {
  const { result } = await measured({ lnPerWord, cell: 51, seed: 21 });
  const value = result.measures.find(({ code }) => code === 'line-decrement')?.value ?? NaN;
  // Heights of real digits vary by some percent, so the slope of seven words is not as sharp as on a drawn page.
  expect(Math.abs(value - lnPerWord)).toBeLessThan(0.0025);
});
