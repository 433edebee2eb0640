/** The shopping page: 20 times "tea" among other words, ten on each half, the same for every client. */

const others = [
  'milk',
  'soap',
  'rice',
  'salt',
  'oats',
  'eggs',
  'jam',
  'nuts',
  'corn',
  'plums',
  'bread',
  'leeks',
  'ten',
  'ten',
  'sea',
  'ham',
];
const columns = 8;
const rows = 13;
/** Columns of "tea" in each row, spread by hand over both halves. */
const teaAt: readonly (readonly number[])[] = [
  [1, 6],
  [3],
  [0, 5],
  [7],
  [2],
  [4, 1],
  [6],
  [3, 5],
  [0],
  [7, 2],
  [4],
  [1, 6],
  [5, 3],
];

/** Rows of words as printed. `target` marks the words to circle; the client never sees the mark. */
export function shoppingPage(): { word: string; target: boolean }[][] {
  let next = 0;
  return Array.from({ length: rows }, (_, row) =>
    Array.from({ length: columns }, (_unused, column) => {
      if (teaAt[row]?.includes(column)) return { word: 'tea', target: true };
      const word = others[(next * 5 + row) % others.length] ?? 'milk';
      next += 1;
      return { word, target: false };
    }),
  );
}
