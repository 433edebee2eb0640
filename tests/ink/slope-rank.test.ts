import { expect, it } from 'vitest';
import { seededRandom } from '../../build/letters/random.ts';
import { SlopeRanks } from '../../renderer/statistics/slope-rank.ts';

it('finds the k-th slope as a sorted list of all slopes does', () => {
  const random = seededRandom(4);
  const x = Array.from({ length: 80 }, (_, i) => i + random.next() / 2).reverse();
  const y = x.map((at) => 0.3 * at + (random.next() < 0.3 ? 0 : random.normal()));
  const slopes: number[] = [];
  for (let i = 0; i < 80; i += 1) for (let j = i + 1; j < 80; j += 1) slopes.push((y[j]! - y[i]!) / (x[j]! - x[i]!));
  slopes.sort((a, b) => a - b);
  const ranks = new SlopeRanks(x, y);
  expect(ranks.pairs).toBe(slopes.length);
  for (const k of [0, 7, 1500, 1580, 3000, slopes.length - 1]) expect(ranks.at(k)).toBeCloseTo(slopes[k]!, 8);
});
