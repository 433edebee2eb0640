import { expect, test } from 'vitest';
import { wordNear } from '../../../renderer/logic/sample/word-walk.ts';

const box = (xMm: number, yMm: number, widthMm = 10) => ({ xMm, yMm, widthMm, heightMm: 4 });
const page = { lines: [{ words: [{ box: box(0, 0) }, { box: box(14, 0) }] }, { words: [{ box: box(0, 12, 24) }] }] };

test('the word in hand is found again where its ink is now', () => {
  expect(wordNear(page, box(14, 0))).toEqual({ line: 0, word: 1 });
  // Two words that became one, and a word that went to the line below.
  expect(wordNear(page, box(13, 12))).toEqual({ line: 1, word: 0 });
  expect(wordNear({ lines: [] }, box(0, 0))).toBeNull();
});
