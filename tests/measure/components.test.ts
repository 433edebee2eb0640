import fc from 'fast-check';
import { expect, test } from 'vitest';
import { connectedComponents } from '../../renderer/measure/image/components.ts';
import { holes } from '../../renderer/measure/image/holes.ts';
import { inkRuns, paperRuns } from '../../renderer/measure/image/runs.ts';

/** Components by flood fill, pixel by pixel. */
function flooded(bitmap: Uint8Array, width: number, height: number, ink: 0 | 1, diagonal: boolean): number[][] {
  const seen = new Uint8Array(bitmap.length);
  const found: number[][] = [];
  bitmap.forEach((value, start) => {
    if (value !== ink || seen[start]) return;
    const piece = [start];
    seen[start] = 1;
    for (const i of piece)
      for (let dy = -1; dy <= 1; dy += 1)
        for (let dx = -1; dx <= 1; dx += 1) {
          if (!diagonal && dx !== 0 && dy !== 0) continue;
          const [x, y] = [(i % width) + dx, Math.floor(i / width) + dy];
          if (x < 0 || y < 0 || x >= width || y >= height) continue;
          const j = y * width + x;
          if (bitmap[j] !== ink || seen[j]) continue;
          seen[j] = 1;
          piece.push(j);
        }
    found.push(piece);
  });
  return found;
}

const bitmaps = fc.tuple(fc.integer({ min: 1, max: 24 }), fc.integer({ min: 1, max: 24 })).chain(([width, height]) =>
  fc.record({
    width: fc.constant(width),
    height: fc.constant(height),
    pixels: fc.array(fc.constantFrom(0, 1), { minLength: width * height, maxLength: width * height }),
  }),
);

test('pieces of ink and their sizes equal a flood fill', () => {
  fc.assert(
    fc.property(bitmaps, ({ width, height, pixels }) => {
      const bitmap = Uint8Array.from(pixels);
      const pieces = connectedComponents(inkRuns(bitmap, width, height), 1);
      const expected = flooded(bitmap, width, height, 1, true);
      expect([...pieces.area].sort((a, b) => a - b)).toEqual(expected.map((p) => p.length).sort((a, b) => a - b));
    }),
    { seed: 11 },
  );
});

test('closed loops are the pieces of paper that do not reach the edge', () => {
  fc.assert(
    fc.property(bitmaps, ({ width, height, pixels }) => {
      const bitmap = Uint8Array.from(pixels);
      const runs = inkRuns(bitmap, width, height);
      const inside = flooded(bitmap, width, height, 0, false).filter((piece) =>
        piece.every((i) => {
          const [x, y] = [i % width, Math.floor(i / width)];
          return x > 0 && y > 0 && x < width - 1 && y < height - 1;
        }),
      );
      const found = holes(runs, connectedComponents(runs, 1), 1);
      expect(found.map((h) => h.area).sort((a, b) => a - b)).toEqual(inside.map((p) => p.length).sort((a, b) => a - b));
    }),
    { seed: 13 },
  );
});

test('a loop knows the ink around it, an island inside it does not confuse it', () => {
  const rows = ['#########', '#.......#', '#..###..#', '#..#.#..#', '#..###..#', '#.......#', '#########', '.........'];
  const bitmap = Uint8Array.from([...rows.join('')].map((c) => (c === '#' ? 1 : 0)));
  const runs = inkRuns(bitmap, 9, 8);
  const found = holes(runs, connectedComponents(runs, 1), 1);
  expect(found.map((h) => [h.area, h.component])).toEqual([
    [26, 0],
    [1, 1],
  ]);
});

test('runs of ink and of paper fill every row', () => {
  fc.assert(
    fc.property(bitmaps, ({ width, height, pixels }) => {
      const ink = inkRuns(Uint8Array.from(pixels), width, height);
      const paper = paperRuns(ink);
      const length = (runs: typeof ink): number => {
        let sum = 0;
        for (let r = 0; r < runs.count; r += 1) sum += runs.to[r]! - runs.from[r]!;
        return sum;
      };
      expect(length(ink) + length(paper)).toBe(width * height);
    }),
    { seed: 17 },
  );
});
