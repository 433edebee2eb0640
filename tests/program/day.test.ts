import { expect, test } from 'vitest';
import { compose } from '../../renderer/program/compose.ts';
import { dayOf } from '../../renderer/program/day.ts';
import { added } from '../../renderer/program/edit.ts';
import { client, rules } from './support.ts';

test('equipment and advice do not count, and what goes beyond the limits is said', () => {
  const input = client({ grasp: 2, 'in-hand': 1, opposition: 2, fatigue: 2 }, { cautions: ['helper'] });
  const { lines } = compose(input, rules);
  const day = dayOf(lines, rules);
  expect(day.items).toBe(lines.filter((line) => line.dose.minutes > 0).length);
  expect(day).toMatchObject({ itemsMost: 5, minutesMost: 30, over: false });
  expect(day.writing).toBeGreaterThanOrEqual(day.minutes / 2);
  const more = ['form-boxes', 'same-lean', 'word-spacer', 'print-first', 'light-line'].reduce(
    (all, code) => added(all, code, input, rules, code),
    lines,
  );
  expect(dayOf(more, rules).over).toBe(true);
});
