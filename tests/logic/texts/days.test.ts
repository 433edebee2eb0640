/** Days of the Gregorian calendar; those on which clocks change are the European and Brazilian ones (IANA tz database). */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { daysBetween, daysLater } from '../../../renderer/logic/texts/days.ts';

test.each([
  ['2024-02-28', 1, '2024-02-29'],
  ['2023-02-28', 1, '2023-03-01'],
  ['2026-12-31', 1, '2027-01-01'],
  ['2026-03-28', 2, '2026-03-30'],
  ['2026-10-24', 2, '2026-10-26'],
  ['2018-11-03', 1, '2018-11-04'],
  ['2026-04-15', -91, '2026-01-14'],
])('%s and %i days is %s', (day, days, then) => {
  expect(daysLater(day, days)).toBe(then);
  expect(daysBetween(day, then)).toBe(days);
});

test('there and back is the same day, and as many days as went, in any year', () => {
  const day = fc.date({ min: new Date('1900-01-01'), max: new Date('2199-12-31'), noInvalidDate: true });
  fc.assert(
    fc.property(day, fc.integer({ min: -5000, max: 5000 }), (date, days) => {
      const from = date.toISOString().slice(0, 10);
      const to = daysLater(from, days);
      expect(daysBetween(from, to)).toBe(days);
      expect(daysLater(to, -days)).toBe(from);
    }),
  );
});

test('what is no day is an error, never another day', () => {
  expect(() => daysLater('', 1)).toThrow(RangeError);
  expect(daysBetween('', '2026-01-01')).toBeNaN();
});
