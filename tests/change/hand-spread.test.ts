/** Two intervals of a page measure: this hand from page to page, and whether a difference is more than that. */
import { expect, test } from 'vitest';
import { rulesCurrent } from '../../db/rules/index.ts';
import { handChange, handInterval, handScaleOf, handSpread, knownHandSpread } from '../../renderer/change/index.ts';
import { limits } from './support.ts';

const xHeight = knownHandSpread(rulesCurrent().thresholds, 'x-height')!;

test('before any repeats the figure of ordinary writers counts, larger by what weeks add', () => {
  const spread = handSpread(xHeight, [], 'ratio', limits)!;
  expect(spread).toEqual({ sd: expect.closeTo(0.12 * 1.25, 10) as number, df: 6, scale: 'ratio' });
  // 2.4469 is t(.975, 6), NIST/SEMATECH e-Handbook 1.3.6.7.2.
  const { low, high } = handInterval(2.4, spread)!;
  expect(low).toBeCloseTo(2.4 * Math.exp(-2.4469 * 0.15), 3);
  expect(high).toBeCloseTo(2.4 * Math.exp(2.4469 * 0.15), 3);
});

test('own repeats of a steady hand narrow it', () => {
  const own = handSpread(xHeight, [[2.4, 2.42, 2.38, 2.41, 2.4, 2.39]], 'ratio', limits)!;
  expect(own.df).toBe(11);
  expect(own.sd).toBeLessThan(0.15);
});

test('a measure without a figure waits for three repeats of its own', () => {
  expect(handSpread(null, [[1, 1.1, 1.2]], 'difference', limits)).toBeNull();
  expect(
    handSpread(
      null,
      [
        [1, 1.1],
        [1, 1.2, 1.1],
      ],
      'difference',
      limits,
    ),
  ).toMatchObject({ df: 3 });
  expect(handSpread(null, [[1, 1, 1, 1]], 'difference', limits)).toBeNull();
});

test('a difference within noise is none, a large one has its direction', () => {
  const spread = handSpread(xHeight, [], 'ratio', limits)!;
  expect(handChange([2.4, 2.5, 2.3], [2.0, 2.1], spread, limits)).toMatchObject({ beyond: null });
  expect(handChange([2.4, 2.5, 2.3], [1.1, 1.2], spread, limits)).toMatchObject({ beyond: 'down' });
  expect(handChange([2.4], [], spread, limits)).toBeNull();
});

test('values that a ratio cannot hold are no values', () => {
  const spread = handSpread(0.11, [], 'ratio', limits)!;
  expect(handInterval(-0.1, spread)).toBeNull();
  expect(handChange([-0.1], [0.2], spread, limits)).toBeNull();
});

test('sizes and ratios are compared in proportion, angles and percentages as they are', () => {
  expect(['mm', 'xh', '1'].map(handScaleOf)).toEqual(['ratio', 'ratio', 'ratio']);
  expect(['deg', '%', '% per line', 'ln(x-height) per word'].map(handScaleOf)).toEqual(
    Array.from({ length: 4 }, () => 'difference'),
  );
});
