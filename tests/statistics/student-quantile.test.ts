import { expect, test } from 'vitest';
import { studentQuantile } from '../../renderer/statistics/student-quantile.ts';

/**
 * NIST/SEMATECH e-Handbook of Statistical Methods, section 1.3.6.7.2 (upper critical values of Student's t), to three
 * decimals; the last two columns from scipy 1.x `stats.t.ppf`.
 */
test.each([
  [0.975, 1, 12.706],
  [0.975, 2, 4.303],
  [0.975, 3, 3.182],
  [0.975, 7, 2.365],
  [0.975, 10, 2.228],
  [0.975, 30, 2.042],
  [0.995, 6, 3.707],
  [0.995, 20, 2.845],
  [0.95, 5, 2.015],
])('quantile %f with %i degrees of freedom is %f', (chance, df, value) => {
  expect(studentQuantile(chance, df)).toBeCloseTo(value, 3);
});

test('mirrors, and refuses what is no chance', () => {
  expect(studentQuantile(0.025, 7)).toBeCloseTo(-2.365, 3);
  expect(studentQuantile(0.5, 4)).toBeCloseTo(0, 10);
  expect(studentQuantile(0.975, 6.5)).toBeGreaterThan(studentQuantile(0.975, 7));
  expect(() => studentQuantile(1, 5)).toThrow(RangeError);
  expect(() => studentQuantile(0.9, 0)).toThrow(RangeError);
});
