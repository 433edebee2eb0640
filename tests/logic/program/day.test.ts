import { expect, test } from 'vitest';
import { compose } from '../../../renderer/logic/program/draft/compose.ts';
import { dayLimits, dayOf } from '../../../renderer/logic/program/draft/day.ts';
import { added } from '../../../renderer/logic/program/clinic/edit-lines.ts';
import { factsOf } from '../../../renderer/logic/program/facts/program-facts.ts';
import { client, rules } from './support.ts';

test('equipment and advice do not count, and what goes beyond the limits is said', () => {
  const input = client({ grasp: 2, 'in-hand': 1, opposition: 2, fatigue: 2 }, { cautions: ['helper'] });
  const { lines } = compose(input, rules);
  const limits = dayLimits(factsOf(input, rules));
  const day = dayOf(lines, limits);
  expect(day.items).toBe(lines.filter((line) => line.dose.minutes > 0).length);
  expect(day).toMatchObject({ itemsMost: 5, minutesMost: 30, over: false });
  expect(day.writing).toBeGreaterThanOrEqual(day.minutes / 2);
  const more = ['form-boxes', 'same-lean', 'word-spacer', 'print-first', 'light-line'].reduce(
    (all, code) => added(all, code, input, rules, code),
    lines,
  );
  expect(dayOf(more, limits).over).toBe(true);
});

test('marked fatigue and conditions that weaken with use leave 20 minutes a day', () => {
  for (const input of [client({ fatigue: 1 }), client({}, { diagnoses: ['myasthenia'] })]) {
    const limits = dayLimits(factsOf(input, rules));
    expect(limits.minutes).toBe(20);
    expect(dayOf(compose(input, rules).lines, limits)).toMatchObject({ minutesMost: 20, over: false });
  }
  expect(dayLimits(factsOf(client({ fatigue: 2 }), rules)).minutes).toBe(30);
});
