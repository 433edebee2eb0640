import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { normalise } from '../../../renderer/logic/readback/normalise.ts';
import { addCounts, countReadback, scoreOf, scoreReadback } from '../../../renderer/logic/readback/score.ts';

describe('what counts as the same word', () => {
  test.each([
    ["Don't go.", 'dont  GO', 2, 2],
    ['a well-known shop', 'a well known shop', 2, 3],
    ['a well\u2010known shop', 'a well-known shop', 3, 3],
    ['How are you?', 'how are you?', 3, 3],
    ['How are you?', 'how are yo?', 2, 3],
    ['How are you?', 'how are you', 3, 3],
    ['pay 2.5 now', 'pay 25 now', 2, 3],
    ['pay $12.50 now.', 'pay $12.50 now', 3, 3],
    ['pay $ 12.50', 'pay $12.50', 2, 2],
    ['meet at 10:30', 'meet at 1030', 2, 3],
    ['milk, bread,eggs', 'milk bread eggs', 3, 3],
    ['bread & butter', 'bread and butter', 3, 3],
    ['at 3 p.m.', 'at 3 pm', 3, 3],
    ['costs 1,000', 'costs 1000', 1, 2],
    ['caf\u00e9', 'cafe\u0301', 1, 1],
  ])('%s / %s', (text, read, right, intended) => {
    const score = scoreReadback(text, read);
    expect([score.wordsRight, score.wordsIntended]).toEqual([right, intended]);
  });

  test('a dash between words is no word', () => {
    expect(normalise('milk \u2013 bread \u2014 eggs')).toBe('milk bread eggs');
  });
});

describe('a decimal point misread costs once', () => {
  // One word of three and one letter, however the point was misread.
  test.each([
    ['pay 2.5 now', 'pay 25 now'],
    ['pay 2.5 now', 'pay 2 5 now'],
    ['pay 2.5 now', 'pay 2,5 now'],
    ['pay 2.5 now', 'pay 2. 5 now'],
    ['pay $12.50 now', 'pay $12 50 now'],
    ['meet 10:30 here', 'meet 10 30 here'],
  ])('%s / %s', (text, read) => {
    const counts = countReadback(text, read);
    expect(counts).toMatchObject({ wordsRight: 2, wordsIntended: 3, wordEdits: 1, letterEdits: 1, spaceErrors: 0 });
  });

  test('two numbers beside each other stay two', () => {
    expect(countReadback('2 5 2.5', '2 5 2.5')).toMatchObject({ wordsRight: 3, wordsIntended: 3 });
    expect(countReadback('sizes 2 5', 'sizes 2 5')).toMatchObject({ wordsRight: 3, wordsIntended: 3 });
  });
});

describe('letters', () => {
  test("'?' is a substitution and shows in the table", () => {
    const score = scoreReadback('call the clinic', 'call t?e clinic');
    expect(score.confusions).toEqual([{ intended: 'h', read: '?', count: 1 }]);
    expect(score.wordsRight).toBe(2);
  });

  test('left-out and added letters have an empty side', () => {
    expect(scoreReadback('letter', 'leter').confusions).toEqual([{ intended: 't', read: '', count: 1 }]);
    expect(scoreReadback('leter', 'letter').confusions).toEqual([{ intended: '', read: 't', count: 1 }]);
  });

  test('a word left out is not counted as a lost gap', () => {
    expect(scoreReadback('please call the clinic', 'please clinic').spaceErrors).toBe(0);
  });

  test.each([
    ['buy milk', 'buymilk', 1],
    ['the cat', 'th ecat', 2],
    ['together', 'to gether', 1],
    ['to get her', 'together', 2],
    ['buy milk now', 'buy mlik now', 0],
  ])('gaps of %s read as %s: %i', (text, read, gaps) => expect(scoreReadback(text, read).spaceErrors).toBe(gaps));
});

test('the own spelling of the client is not illegibility', () => {
  const spelling = [{ meant: 'definitely', written: 'definately' }];
  expect(scoreReadback('I will definitely come', 'I will definately come').wordsRight).toBe(3);
  expect(scoreReadback('I will definitely come', 'I will definately come', spelling)).toMatchObject({
    wordsRight: 4,
    wer: 0,
    cerWithSpaces: 0,
  });
});

test('an empty text has no accuracy and no numbers that are not numbers', () => {
  expect(scoreReadback('', 'something')).toMatchObject({ wordAccuracy: null, wer: null, cerWithSpaces: null });
  expect(scoreReadback('', '')).toMatchObject({ wordsIntended: 0, wilson95: { low: null, high: null } });
});

test('nothing read is all left out', () => {
  const score = scoreReadback('call me', '');
  expect(score).toMatchObject({ wordsRight: 0, wer: 1, cerWithSpaces: 1, cerLettersOnly: 1, spaceErrors: 0 });
});

test('lines add up to the page', () => {
  const lines = [countReadback('buy milk', 'buy mulk'), countReadback('call me', 'call me')];
  const score = scoreOf(addCounts(lines));
  expect(score).toMatchObject({ wordsRight: 3, wordsIntended: 4, wordAccuracy: 0.75 });
  expect(score.confusions).toEqual([{ intended: 'i', read: 'u', count: 1 }]);
});

const phrase = fc.string({ unit: fc.constantFrom(..."abc ?-'.,5$"), maxLength: 24 });

test('whatever is typed: shares stay shares, edits balance, the same answer twice', () => {
  fc.assert(
    fc.property(phrase, phrase, (text, read) => {
      const counts = countReadback(text, read);
      const score = scoreOf(counts);
      expect(scoreReadback(text, read)).toEqual(score);
      expect(counts.marks).toHaveLength(score.wordsIntended);
      expect(counts.marks.filter((mark) => mark.right)).toHaveLength(score.wordsRight);
      if (score.wordAccuracy !== null) {
        expect(score.wilson95.low!).toBeLessThanOrEqual(score.wordAccuracy + 1e-12);
        expect(score.wilson95.high!).toBeGreaterThanOrEqual(score.wordAccuracy - 1e-12);
        expect(score.wer!).toBeGreaterThanOrEqual(1 - score.wordAccuracy - 1e-12);
      }
      expect(JSON.stringify(score)).not.toContain('NaN');
    }),
  );
});

test('a text reads back as itself', () => {
  fc.assert(
    fc.property(phrase, (text) => {
      const score = scoreReadback(text, text);
      if (!text.includes('?')) expect(score.wordsRight).toBe(score.wordsIntended);
    }),
  );
});
