import { expect, test } from 'vitest';
import { shoppingPage } from '../../../renderer/logic/intake/shopping-page.ts';

test('twenty targets, ten on each half of the page, and nothing else reads "tea"', () => {
  const page = shoppingPage();
  const half = (from: number, to: number) =>
    page.flatMap((row) => row.slice(from, to)).filter((cell) => cell.target).length;
  expect([half(0, 4), half(4, 8)]).toEqual([10, 10]);
  expect(page.flat().filter((cell) => cell.word === 'tea').length).toBe(20);
});

test('no two neighbors of a row are the same word', () => {
  for (const row of shoppingPage()) row.forEach((cell, i) => expect(cell.word).not.toBe(row[i + 1]?.word));
});
