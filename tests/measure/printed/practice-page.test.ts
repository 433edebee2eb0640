/** Practice pages that came back: squares, boxes, checks and bold lines are no writing; what stands in them is. */
import { expect, test } from 'vitest';
import type { PracticeRequest } from '../../../renderer/logic/pages/practice/practice-steps.ts';
import { practiceSheets } from '../../../renderer/logic/pages/practice/practice.ts';
import { printedOf } from '../../../renderer/logic/pages/practice/printed-areas.ts';
import { codeText, readPrintedPage } from '../../../renderer/measure/index.ts';
import { practiceAsked } from '../../logic/pages/practice-asked.ts';
import { phone, rastered, scanner, type Taking, taken } from './log-picture.ts';
import { inCells, penned, practiceSvg } from './practice-picture.ts';

const code = codeText({
  layout: 1,
  kind: 'practice',
  few: false,
  client: '0a1b2c3d4e',
  firstDay: '2026-11-02',
  sheet: 1,
  content: '123456',
});

/** Lines as words and heights, of what was written on the first sheet of a request. */
async function readBack(request: Partial<PracticeRequest>, written: readonly string[], how: Taking) {
  const [sheet] = practiceSheets(practiceAsked(request));
  const picture = await taken(await rastered(practiceSvg(sheet!, code, written)), how, 5);
  const read = readPrintedPage(picture, null, { [code]: printedOf(sheet!) });
  if (read.kind !== 'practice' || !read.measured) throw new Error(`read as ${read.kind}`);
  return read.measured.lines.map(({ words, xHeightMm }) => ({ words: words.length, xHeightMm: xHeightMm ?? 0 }));
}

const rows = [0, 1, 2, 3, 4];

test.each([
  ['squares of 7 mm, scanned', 'squares-7', 7, 7, scanner],
  ['boxes of 6 mm, scanned', 'boxes-6', 6, 10.5, scanner],
  ['boxes of 5 mm, by phone', 'boxes-5', 5, 8.75, phone],
] as const)(
  'block letters in %s: lines, words by empty cells, true heights',
  async (_name, ruling, cell, pitch, how) => {
    const height = cell / 3;
    const written = rows.map((row) => inCells('milk and bread', 15, cell, 30 + (row + 1) * pitch + 0.7 * cell, height));
    const lines = await readBack({ ruling }, written, how);
    expect(lines.map(({ words }) => words)).toEqual([3, 3, 3, 3, 3]);
    for (const { xHeightMm } of lines) expect(Math.abs(xHeightMm - height)).toBeLessThan(0.08);
  },
);

test('signatures over the pale word that no bank takes, and a check that is filled in', async () => {
  const names = [45.4, 74.4].flatMap((y) => [
    penned('Maria Lopez', 28, y, 3.4, { hand: 'cedarville-cursive' }),
    penned('Maria Lopez', 120, y, 3.4, { hand: 'cedarville-cursive' }),
  ]);
  expect((await readBack({ ruling: 'signature', models: [] }, names, phone)).map(({ words }) => words)).toEqual([4, 4]);
  const check = await readBack(
    { ruling: 'check-true', models: ['May 2, City Bakery, 45.10, forty-five and ten'] },
    [
      penned('May 2', 124, 50, 2.6),
      penned('City Bakery', 22, 67.5, 2.6),
      penned('forty-five and ten', 22, 82.2, 2.6),
      penned('Maria Lopez', 105, 99, 2.8),
    ],
    scanner,
  );
  expect(check.map(({ words }) => words)).toEqual([2, 2, 3, 2]);
});

test('bold lines for low vision are taken for lines', async () => {
  const written = rows.map((row) => penned('milk and bread', 21, 30 + (row + 2) * 8.7 - 0.2, 2.9));
  const lines = await readBack({ ruling: 'ruled-8.7', bold: true, startLine: 'left' }, written, scanner);
  expect(lines.map(({ words }) => words)).toEqual([3, 3, 3, 3, 3]);
});
