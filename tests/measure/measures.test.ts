import { expect, test } from 'vitest';
import { MEASURES, measuresOf } from '../../renderer/measure/measures/measure-table.ts';
import type { ReadPage } from '../../renderer/measure/measures/measure.ts';
import type { LetterResult, LineResult, WordResult } from '../../renderer/measure/types.ts';

const box = { xMm: 0, yMm: 0, widthMm: 1, heightMm: 1 };

function letter(change: Partial<LetterResult>): LetterResult {
  return {
    box,
    text: null,
    topMm: 3,
    bottomMm: 0,
    zone: 'x',
    shape: null,
    loops: 0,
    closureExpected: null,
    excluded: false,
    ...change,
  };
}

function word(sizeMm: number, change: Partial<WordResult> = {}): WordResult {
  return {
    box,
    xHeightMm: sizeMm,
    gapBeforeMm: 1.5 * sizeMm,
    text: null,
    sizeMm,
    xHeightsMm: [sizeMm, sizeMm, sizeMm],
    ascendersMm: [2 * sizeMm],
    descendersMm: [sizeMm],
    letterGapsMm: [0.3 * sizeMm],
    slantDeg: 5,
    strokeWidthMm: 0.5,
    slantsDeg: [4, 5, 6],
    strokeWidthsMm: [0.5],
    loops: 1,
    letterCount: 3,
    letters: [],
    excluded: false,
    ...change,
  };
}

function line(words: WordResult[], change: Partial<LineResult> = {}): LineResult {
  return {
    box,
    xHeightMm: 3,
    baselineAngleDeg: 1,
    baselineRmsMm: 0.2,
    words,
    baseline: [],
    startMm: 20,
    rulingOffsetMm: null,
    ...change,
  };
}

function page(lines: LineResult[]): ReadPage {
  return {
    version: 'test',
    page: {
      widthMm: 210,
      heightMm: 297,
      dpi: 300,
      rotationDeg: 0,
      scaleSource: 'dpi',
      rulingMm: null,
      toPicture: [1, 0, 0, 0, 1, 0, 0, 0, 1],
    },
    lines,
    warnings: [],
    textFits: null,
    darknessPercent: 70,
    rulings: [],
    loops: [],
  };
}

const values = (read: ReadPage): Record<string, number | null> =>
  Object.fromEntries(measuresOf(read, 3).map((m) => [m.code, m.value]));

test('a page without words has every measure, all unknown', () => {
  const empty = measuresOf(page([]), 1);
  expect(empty.map((m) => m.code)).toEqual(MEASURES.map((m) => m.code));
  expect(empty.every((m) => m.value === null && m.low === null && m.high === null)).toBe(true);
});

test('codes and units are those of the command', () => {
  const units = Object.fromEntries(MEASURES.map((m) => [m.code, m.unit]));
  expect(units).toMatchObject({
    'x-height': 'mm',
    'x-height-cv': '%',
    'ascender-ratio': 'xh',
    'descender-ratio': 'xh',
    'line-decrement': 'ln(x-height) per word',
    'line-decrement-letter': 'ln(x-height) per letter',
    'first-last-five': '%',
    'page-decrement': '% per line',
    'word-gap': 'xh',
    'letter-gap': 'xh',
    'word-gap-cv': '%',
    'gap-ratio': '1',
    'closed-loops': 'count',
    closure: '%',
    slant: 'deg',
    'slant-sd': 'deg',
    'stroke-width': 'mm',
    'baseline-angle': 'deg',
    'baseline-rms': 'mm',
  });
});

test('plain pages give plain values', () => {
  const read = page([1, 2, 3, 4].map(() => line([word(3), word(3), word(3), word(3)])));
  expect(values(read)).toMatchObject({
    'x-height': 3,
    'x-height-cv': 0,
    'ascender-ratio': 2,
    'descender-ratio': 1,
    'line-decrement': 0,
    'page-decrement': 0,
    'word-gap': 1.5,
    'letter-gap': 0.3,
    'gap-ratio': 5,
    'gap-separation': 1,
    'closed-loops': 16,
    slant: 5,
    'stroke-width': 0.5,
    'baseline-angle': 1,
    'margin-drift': 0,
  });
});

test('shrinking along the line and down the page is read as written', () => {
  const read = page(
    [0, 1, 2, 3, 4].map((row) => line([0, 1, 2, 3, 4, 5].map((k) => word(3 * 0.96 ** k * 0.98 ** row)))),
  );
  const found = values(read);
  expect(found['line-decrement']).toBeCloseTo(Math.log(0.96), 6);
  expect(found['page-decrement']).toBeCloseTo(-2, 6);
});

test('a row of one letter: the first five against the last five', () => {
  // Fifteen letters, each 1 % of the first smaller than the one before: means of 0.98 and 0.88 of it.
  const row = Array.from({ length: 15 }, (_, i) => 3 * (1 - 0.01 * i));
  const found = values(page([line([word(3, { xHeightsMm: row, letterCount: 15 })])]));
  expect(found['first-last-five']).toBeCloseTo(100 * (1 - 0.88 / 0.98), 3);
  expect(values(page([line([word(3, { xHeightsMm: row.slice(0, 9) })])]))['first-last-five']).toBeNull();
});

test('letters that grow taller by their kind alone are no change of size', () => {
  // Lines begin with small c and end with taller e; each is always the same height.
  const c = letter({ text: 'c', topMm: 2.8 });
  const e = letter({ text: 'e', topMm: 3.2 });
  const begin = word(3, { text: 'cc', letters: [c, c], xHeightsMm: [2.8, 2.8], xHeightMm: 2.8, letterCount: 2 });
  const mixed = word(3, { text: 'ce', letters: [c, e], xHeightsMm: [2.8, 3.2], xHeightMm: 3, letterCount: 2 });
  const end = word(3, { text: 'ee', letters: [e, e], xHeightsMm: [3.2, 3.2], xHeightMm: 3.2, letterCount: 2 });
  const read = page([1, 2, 3, 4].map(() => line([begin, begin, mixed, end, end])));
  expect(values(read)['line-decrement']).toBeCloseTo(0, 6);
  expect(values(read)['line-decrement-letter']).toBeCloseTo(0, 6);
});

test('closure counts the letters that should close, with Wilson’s interval', () => {
  const open = letter({ text: 'o', closureExpected: true });
  const closed = letter({ text: 'a', closureExpected: true, loops: 1 });
  const other = letter({ text: 'e', closureExpected: false });
  const struck = letter({ text: 'o', closureExpected: true, excluded: true });
  const read = page([line([word(3, { letters: [open, closed, closed, closed, other, struck] })])]);
  const found = measuresOf(read, 1).find((m) => m.code === 'closure')!;
  expect([found.value, found.n]).toEqual([75, 4]);
  expect(found.low).toBeCloseTo(30.06, 1);
  expect(found.high).toBeCloseTo(95.44, 1);
});

test('an excluded word leaves every measure, and its gaps with it', () => {
  const odd = word(9, { excluded: true, gapBeforeMm: 99 });
  const read = page([line([word(3), odd, word(3), word(3)])]);
  expect(values(read)).toMatchObject({ 'x-height': 3, 'word-gap': 1.5, 'closed-loops': 3 });
});

test('the same page and seed give the same intervals, and the interval holds the value', () => {
  const read = page(
    [0, 1, 2, 3, 4].map((row) => line([0, 1, 2, 3, 4].map((k) => word(3 + 0.1 * ((row * 7 + k * 3) % 5))))),
  );
  expect(measuresOf(read, 9)).toEqual(measuresOf(read, 9));
  for (const m of measuresOf(read, 9))
    if (m.low !== null && m.high !== null && m.value !== null) {
      expect(m.low).toBeLessThanOrEqual(m.value + 1e-9);
      expect(m.high).toBeGreaterThanOrEqual(m.value - 1e-9);
    }
});
