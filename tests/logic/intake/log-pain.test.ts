/** Pain that rises in the practice log: CLINICAL notes 2, b4 (last three days against the first three). */
import { expect, test } from 'vitest';
import { logPainRise } from '../../../renderer/logic/record/log-pain.ts';

const days = (...pains: (number | null)[]) =>
  pains.map((pain, i) => ({ date: `2026-03-${String(i + 1).padStart(2, '0')}`, pain }));

test('the last three days stand against the first three', () => {
  expect(logPainRise(days(0, 1, 2, 3, 4, 5))).toBe(3);
  expect(logPainRise(days(1, 1, 1, 9, 1, 1, 1))).toBe(0);
  expect(logPainRise(days(4, 4, 4, 1, 1, 1))).toBe(-3);
});

test('days without an answer do not count, and fewer than six say nothing', () => {
  expect(logPainRise(days(0, null, 0, 0, null, 3, 3, 3))).toBe(3);
  expect(logPainRise(days(0, 0, 0, 5, 5))).toBeNull();
  expect(logPainRise([])).toBeNull();
});

test('after a review the log is looked at anew', () => {
  expect(logPainRise(days(0, 0, 0, 4, 4, 4), '2026-03-04')).toBeNull();
  expect(logPainRise(days(0, 0, 0, 4, 4, 4, 4, 4, 4), '2026-03-04')).toBe(0);
});
