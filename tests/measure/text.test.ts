import { expect, test } from 'vitest';
import { alignLetters } from '../../renderer/measure/letters/align-letters.ts';
import { alignWords, expectedWidth } from '../../renderer/measure/letters/align-words.ts';
import { fitText } from '../../renderer/measure/letters/text-fit.ts';
import { usualWidth } from '../../renderer/measure/letters/letter-kinds.ts';

const TEXT = 'Please call me back before half past eight. My sister will drive me home after lunch.';
const words = TEXT.split(' ');
const widths = words.map((word, i) => expectedWidth(word) * 1.13 * (1 + 0.06 * Math.sin(7 * i)));

test('words found as written get their text', () => {
  expect(alignWords(widths, words).texts).toEqual(words);
});

test('a word missed, split or joined leaves the others in place', () => {
  const missed = alignWords(
    widths.filter((_, i) => i !== 5),
    words,
  ).texts;
  expect(missed.slice(6)).toEqual(words.slice(7));
  const split = [...widths.slice(0, 4), 2.2, widths[4]! - 2.8, ...widths.slice(5)];
  const { texts } = alignWords(split, words);
  expect(texts.slice(0, 4)).toEqual(words.slice(0, 4));
  expect(texts.slice(-8)).toEqual(words.slice(-8));
  const joined = [...widths.slice(0, 2), widths[2]! + widths[3]! + 0.5, ...widths.slice(4)];
  expect(alignWords(joined, words).texts[2]).toBe('me back');
});

test('the text of another page does not fit, and turned pages are known', () => {
  const lines = [widths.slice(0, 8), widths.slice(8)];
  expect(fitText(lines, TEXT)).toMatchObject({ fits: true, turned: null });
  const other = 'a I we to on at by of in is it a I we to on at by of in is it a I we to';
  expect(fitText(lines, other).fits).toBe(false);
  // As many words a line, a few of them the same.
  const likely = 'Please leave the package by the back gate. The plumber is coming at two on Thursday.';
  expect(fitText(lines, likely).fits).toBe(false);
  expect(fitText([[2, 2, 2, 2]], 'e e e e').fits).toBe(true);
  expect(
    fitText(
      lines.map((line) => [...line].reverse()),
      TEXT,
    ).turned,
  ).toBe('mirrored');
  expect(
    fitText(
      [...lines].reverse().map((line) => [...line].reverse()),
      TEXT,
    ).turned,
  ).toBe('upside-down');
});

test('letters that touch share a piece, a broken letter has two', () => {
  const piece = (width: number, top = 1, bottom = 0): { width: number; top: number; bottom: number } => ({
    width,
    top,
    bottom,
  });
  // p e | n with "pe" touching.
  expect(alignLetters([piece(1.9, 1, 0.7), piece(0.9)], 'pen', usualWidth)).toEqual([
    { first: 0, last: 2, from: 0, to: 1 },
    { first: 2, last: 3, from: 1, to: 2 },
  ]);
  // k in two pieces.
  expect(alignLetters([piece(0.15, 1.8), piece(0.6), piece(0.9)], 'ka', usualWidth)?.[0]).toEqual({
    first: 0,
    last: 1,
    from: 0,
    to: 2,
  });
  expect(alignLetters([], 'a', usualWidth)).toBeNull();
});
