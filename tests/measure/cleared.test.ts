import { expect, test } from 'vitest';
import { cleared } from '../../renderer/measure/image/cleared.ts';

test('print at head and foot is painted in the brightness of the paper beside it; the middle stays', () => {
  const [width, height] = [300, 400];
  const data = new Uint8Array(width * height);
  // Paper that darkens to the right, a black title, a black bar at the foot, and one stroke of writing.
  for (let y = 0; y < height; y += 1)
    for (let x = 0; x < width; x += 1) data[y * width + x] = 240 - Math.floor(x / 10) + ((x + y) % 3);
  for (const [from, to] of [
    [20, 40],
    [110, 130],
    [370, 390],
  ] as const)
    data.fill(10, from * width, to * width);
  const before = data.slice();
  cleared({ width, height, data }, 100, 100);
  expect(data.subarray(100 * width, 300 * width)).toEqual(before.subarray(100 * width, 300 * width));
  for (const y of [0, 30, 99, 300, 380, 399])
    for (let x = 0; x < width; x += 1) expect(Math.abs(data[y * width + x]! - (240 - x / 10))).toBeLessThan(10);
});

test('bands larger than the picture leave no part out and break nothing', () => {
  const data = new Uint8Array(20 * 10).fill(7);
  expect([...new Set(cleared({ width: 20, height: 10, data }, 50, 50).data)]).toHaveLength(1);
});
