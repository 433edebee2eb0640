import { expect, test } from 'vitest';
import { compose } from '../../../renderer/logic/program/draft/compose.ts';
import { dayDose } from '../../../renderer/logic/program/draft/day-dose.ts';
import { dayOf } from '../../../renderer/logic/program/draft/day.ts';
import { added } from '../../../renderer/logic/program/clinic/edit-lines.ts';
import { factsOf } from '../../../renderer/logic/program/facts/program-facts.ts';
import { client, rules } from './support.ts';

test('equipment and advice do not count, and what goes beyond the limits is said', () => {
  const input = client({ grasp: 2, 'in-hand': 1, opposition: 2, fatigue: 2 }, { cautions: ['helper'] });
  const { lines } = compose(input, rules);
  const limits = dayDose(input, factsOf(input, rules));
  const day = dayOf(lines, limits);
  expect(day.items).toBe(lines.filter((line) => line.dose.minutes !== null).length);
  expect(day).toMatchObject({ itemsMost: 5, minutesMost: 18, over: false });
  expect(day.writing).toBeGreaterThanOrEqual(day.minutes / 2);
  const more = ['form-boxes', 'same-lean', 'word-spacer', 'print-first', 'light-line'].reduce(
    (all, code) => added(all, code, input, rules, code),
    lines,
  );
  expect(dayOf(more, limits).over).toBe(true);
});

const rise = (points: number) => ({ measures: [{ code: 'fatigue-rise', value: points, unit: 'points' }] });

test.each([
  [0, 5, 4, 5, 30],
  [1, 5, 4, 5, 30],
  [2, 4, 4, 8, 24],
  [3, 3, 4, 6, 18],
  [4, 2, 4, 6, 10],
  [5, 2, 4, 6, 10],
  [6, 1, 4, 10, 6],
  [9, 1, 4, 10, 6],
])('a rise of %d gives turns of %d minutes, %d of them, %d minutes of rest, %d minutes a day', (points, ...row) => {
  // Source: CLINICAL-2, part c, the table.
  const dose = dayDose(client(), factsOf(client({}, rise(points)), rules));
  expect([dose.turn, dose.turns, dose.rest.least, dose.cap]).toEqual(row);
});

test('no rise known is the row of 3; not back after ten minutes is the last; the worse of screen and sample counts', () => {
  const cap = (...args: Parameters<typeof client>) => dayDose(client(), factsOf(client(...args), rules)).cap;
  expect(cap()).toBe(18);
  expect(cap({ fatigue: 2 }, { ...rise(2), details: { fatigue: 'not-recovered' } })).toBe(6);
  expect(cap({ fatigue: 1 }, rise(1))).toBe(18);
});

test.each([
  [{ attention: 1 as const }, {}, 15],
  [{}, { diagnoses: ['myasthenia'] }, 20],
  [{}, { diagnoses: ['dystonia'] }, 20],
  [{}, { diagnoses: ['carpal-tunnel'] }, 24],
  [{}, { cautions: ['arthritis-flare'] }, 10],
])('the lowest cap wins: %j %j leaves %d minutes a day', (grades, more, cap) => {
  // Source: CLINICAL-2, c2 and b9.
  const input = client(grades, { ...rise(0), ...more });
  const dose = dayDose(input, factsOf(input, rules));
  expect(dose.cap).toBe(cap);
  expect(dayOf(compose(input, rules).lines, dose)).toMatchObject({ minutesMost: cap, over: false });
});

test('lines that fall shorten the turn: onset at line 5 gives 3 lines', () => {
  // Source: CLINICAL part H, worked example; CLINICAL-2 c1: L = floor(0.8 x (5 - 1)) = 3, one minute a line.
  const input = client({}, { measures: [...rise(0).measures, { code: 'onset-line', value: 5, unit: 'line' }] });
  expect(dayDose(input, factsOf(input, rules))).toMatchObject({ lines: 3, turn: 3 });
});
