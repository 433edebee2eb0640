import { expect, test } from 'vitest';
import { alignLetters } from '../../renderer/measure/letters/align-letters.ts';
import type { Piece } from '../../renderer/measure/letters/align-letters.ts';
import { alignWords, expectedWidth } from '../../renderer/measure/letters/align-words.ts';
import { usualWidth } from '../../renderer/measure/letters/letter-kinds.ts';
import { DECIDED, layText } from '../../renderer/measure/letters/text-path.ts';
import type { PathLine } from '../../renderer/measure/letters/text-path.ts';
import { expectedOf } from '../../renderer/measure/letters/word-cost.ts';

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

/** A line of a page whose letters are all one piece a word: places by the usual widths, gaps as clear as can be. */
function lineOf(own: readonly string[], scale: (k: number) => number = () => 1.1): PathLine {
  const line = { from: [] as number[], to: [] as number[], tall: [] as number[][], hanging: [] as number[][] };
  let at = 0;
  own.forEach((text, k) => {
    const word = expectedOf(text);
    const width = word.width * scale(k);
    line.from.push(at);
    line.to.push(at + width);
    line.tall.push(word.tall.filter(({ must }) => must).map((part) => at + part.at * width));
    line.hanging.push(word.hanging.filter(({ must }) => must).map((part) => at + part.at * width));
    at += width + 1.4;
  });
  return { ...line, odds: own.slice(1).map(() => 6), ends: own.map((text) => expectedOf(text).ends) };
}

const wave = (k: number): number => 1.13 * (1 + 0.06 * Math.sin(7 * k));
const written = (): PathLine[] => [lineOf(words.slice(0, 8), wave), lineOf(words.slice(8), wave)];

test('the text is laid along its own page cheaply, along another page dearly', () => {
  const own = layText(written(), words);
  expect(own.stretches.map((stretch) => stretch.words)).toEqual(words.map((_, j) => [j]));
  expect(own.perWord).toBeLessThan(0.5);
  // As many words a line, a few of them the same.
  const likely = 'Please leave the package by the back gate. The plumber is coming at two on Thursday.';
  expect(layText(written(), likely.split(' ')).perWord).toBeGreaterThan(1.5);
  const other = 'a I we to on at by of in is it a I we to on at by of in is it a I we to';
  expect(layText(written(), other.split(' ')).perWord).toBeGreaterThan(1.5);
});

test('what the writer left out, added or wrote without a gap is told, not forced', () => {
  const leftOut = layText([lineOf([...words.slice(0, 5), ...words.slice(6)], wave)], words);
  expect(leftOut.missing).toEqual([5]);
  const added = layText([lineOf([...words.slice(0, 5), 'xxxxxx', ...words.slice(5)], wave)], words);
  expect(added.stretches.map((stretch) => stretch.words.length).indexOf(0)).toBe(5);
  const touching = lineOf(words, wave);
  const odds = [...touching.odds];
  odds[3] = -9;
  const joined = layText([{ ...touching, odds }], words);
  expect(joined.stretches.find((stretch) => stretch.words.length === 2)?.words).toEqual([3, 4]);
});

test('a gap that was decided by hand stays as it was decided', () => {
  const line = lineOf(words, wave);
  const odds = [...line.odds];
  odds[3] = -DECIDED;
  const path = layText([{ ...line, odds }], words);
  expect(path.stretches.some((stretch) => stretch.first === 4)).toBe(false);
});

test('letters that touch share a piece, a broken letter has two', () => {
  const piece = (width: number, top = 1, bottom = 0): Piece => ({ width, top, bottom, bowls: 0 });
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

test('a bowl lies in a letter that has one', () => {
  // Two pieces of one width for "nao": n stands alone, or o does.
  const lone = (bowls: readonly [number, number]): string[] =>
    alignLetters(
      bowls.map((n) => ({ width: 1.35, top: 1, bottom: 0, bowls: n })),
      'nao',
      usualWidth,
    )!.map(({ first, last }) => 'nao'.slice(first, last));
  expect(lone([0, 2])).toEqual(['n', 'ao']);
  expect(lone([1, 1])).toEqual(['na', 'o']);
});
