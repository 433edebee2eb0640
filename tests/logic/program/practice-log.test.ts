import { expect, test } from 'vitest';
import type { PracticeLog } from '../../../db/types/program.ts';
import {
  dayAfter,
  dayProblem,
  emptyDay,
  lastWeek,
  practiceSentence,
} from '../../../renderer/logic/program/ladder/practice-log.ts';
import { toldEnglish } from '../../../renderer/logic/texts/screens/told-english.ts';
import { englishTelling } from '../../../renderer/logic/texts/screens/telling.ts';

const log = (date: string, over: Partial<PracticeLog> = {}): PracticeLog => ({
  ...emptyDay(date),
  id: date,
  at: '2026-01-01T10:00:00.000Z',
  by: 'KT',
  clientId: 'c',
  minutes: 10,
  ...over,
});

test('a day needs a date that is not in the future and at least one figure', () => {
  expect(dayProblem(emptyDay('2026-01-05'), '2026-01-05', toldEnglish.ladder)).toContain('minutes alone are enough');
  expect(dayProblem({ ...emptyDay('2026-01-06'), minutes: 5 }, '2026-01-05', toldEnglish.ladder)).toContain('future');
  expect(dayProblem({ ...emptyDay(''), minutes: 5 }, '2026-01-05', toldEnglish.ladder)).toContain('Give the day');
  expect(dayProblem({ ...emptyDay('2026-01-05'), minutes: 0 }, '2026-01-05', toldEnglish.ladder)).toBe('');
});

test('the next day crosses a month', () => expect(dayAfter('2026-02-28')).toBe('2026-03-01'));

test('the sentence counts days once and says nothing that was not said', () => {
  expect(practiceSentence([], toldEnglish.ladder, englishTelling.decimals)).toBe('No practice has been entered yet.');
  expect(practiceSentence([log('2026-01-05')], toldEnglish.ladder, englishTelling.decimals)).toBe(
    '1 day of practice, 10 minutes.',
  );
  const week = [
    log('2026-01-05', { fatigueBefore: 2, fatigueAfter: 4 }),
    log('2026-01-05'),
    log('2026-01-07'),
    log('2026-01-11'),
  ];
  expect(practiceSentence(week, toldEnglish.ladder, englishTelling.decimals)).toBe(
    '3 days of practice, 40 minutes, about 3 days a week; fatigue rose by about 2.',
  );
});

test('the last week ends with the newest day', () => {
  const logs = ['2026-03-20', '2026-03-14', '2026-03-13'].map((date) => log(date));
  expect(lastWeek(logs).map((each) => each.date)).toEqual(['2026-03-20', '2026-03-14']);
  expect(lastWeek([])).toEqual([]);
});
