import { expect, test } from 'vitest';
import { gapChances } from '../../renderer/measure/letters/gap-model.ts';
import type { GapLine } from '../../renderer/measure/letters/gap-model.ts';
import { seededNumbers } from '../../renderer/measure/seeded-numbers.ts';

/** ln-normal numbers about a median. */
function around(chance: () => number, middle: number, spread: number): number {
  const normal = Math.sqrt(-2 * Math.log(1 - chance())) * Math.cos(2 * Math.PI * chance());
  return middle * Math.exp(spread * normal);
}

/** Lines of words of `letters` pieces; word lengths as in running English (from memory). */
function page(inner: number, between: number, spread: number, seed: number): { lines: GapLine[]; truth: number[][] } {
  const chance = seededNumbers(seed);
  const lengths = [1, 2, 2, 3, 3, 3, 4, 4, 5, 5, 6, 7, 8, 10];
  const lines: GapLine[] = [];
  const truth: number[][] = [];
  for (let row = 0; row < 10; row += 1) {
    const [from, to, gaps, cuts]: [number[], number[], number[], number[]] = [[], [], [], []];
    let at = 0;
    for (let word = 0; word < 8; word += 1) {
      const letters = lengths[Math.floor(chance() * lengths.length)]!;
      for (let k = 0; k < letters; k += 1) {
        if (from.length > 0) {
          const touches = k > 0 && chance() < 0.2;
          const gap = touches ? 0 : around(chance, k === 0 ? between : inner, spread);
          gaps.push(gap);
          cuts.push(k === 0 ? 1 : 0);
          at += gap;
        }
        from.push(at);
        at += 0.85 * around(chance, 1, 0.2);
        to.push(at);
      }
    }
    lines.push({ from, to, gaps, prior: gaps.map(() => 0) });
    truth.push(cuts);
  }
  return { lines, truth };
}

const wrongOf = (chances: readonly number[][], truth: readonly number[][]): number =>
  chances.reduce((sum, line, i) => sum + line.filter((p, k) => (p >= 0.5 ? 1 : 0) !== truth[i]![k]).length, 0);

test('touching, inner and word gaps are told apart in close and in wide hands', () => {
  for (const [inner, between] of [
    [0.12, 0.9],
    [0.3, 1.6],
    [0.7, 3.5],
  ] as const) {
    const { lines, truth } = page(inner, between, 0.25, 3);
    expect(wrongOf(gapChances(lines).chances, truth)).toBeLessThanOrEqual(1);
  }
});

test('where the kinds overlap, the doubt is as large as the error', () => {
  let [expected, wrong] = [0, 0];
  for (let seed = 1; seed <= 12; seed += 1) {
    const { lines, truth } = page(0.4, 1.3, 0.5, seed);
    const { chances } = gapChances(lines);
    expected += chances.flat().reduce((sum, p) => sum + Math.min(p, 1 - p), 0);
    wrong += wrongOf(chances, truth);
  }
  expect(wrong).toBeGreaterThan(20);
  expect(expected / wrong).toBeGreaterThan(0.6);
  expect(expected / wrong).toBeLessThan(1.6);
});

test('a page of one word, and a line of one letter, have no gap to doubt', () => {
  const one = { from: [0], to: [0.9], gaps: [], prior: [] };
  expect(gapChances([one]).chances).toEqual([[]]);
  expect(gapChances([]).chances).toEqual([]);
});
