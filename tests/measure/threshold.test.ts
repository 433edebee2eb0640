import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  reflected,
  SAUVOLA_K,
  SAUVOLA_R,
  SAUVOLA_WINDOW,
  sauvola,
} from '../../renderer/measure/image/ink-threshold.ts';

/** The formula written out, pixel by pixel: slow and plain. */
function writtenOut(data: Uint8Array, width: number, height: number): Uint8Array {
  const half = SAUVOLA_WINDOW >> 1;
  return data.map((gray, i) => {
    const [x, y] = [i % width, Math.floor(i / width)];
    let [sum, square] = [0, 0];
    for (let dy = -half; dy <= half; dy += 1)
      for (let dx = -half; dx <= half; dx += 1) {
        const g = data[reflected(y + dy, height) * width + reflected(x + dx, width)]!;
        sum += g;
        square += g * g;
      }
    const n = SAUVOLA_WINDOW ** 2;
    const mean = sum / n;
    const deviation = Math.sqrt(Math.max(0, square / n - mean * mean));
    return gray <= mean * (1 + SAUVOLA_K * (deviation / SAUVOLA_R - 1)) ? 1 : 0;
  });
}

test('the running threshold equals the formula written out, at any size', () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 1, max: 40 }),
      fc.integer({ min: 1, max: 40 }),
      fc.integer(),
      (width, height, seed) => {
        let state = seed | 1;
        const data = Uint8Array.from({ length: width * height }, () => {
          state = Math.imul(state, 1664525) + 1013904223;
          return state >>> 24;
        });
        expect(sauvola({ width, height, data })).toEqual(writtenOut(data, width, height));
      },
    ),
    { numRuns: 25, seed: 7 },
  );
});

test('the border is mirrored without repeating the edge', () => {
  expect([-2, -1, 0, 4, 5, 6].map((i) => reflected(i, 5))).toEqual([2, 1, 0, 4, 3, 2]);
  expect([-3, 0, 9].map((i) => reflected(i, 1))).toEqual([0, 0, 0]);
});
