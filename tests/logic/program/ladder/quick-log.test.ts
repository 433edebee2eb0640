import { expect, test } from 'vitest';
import { readQuickLog } from '../../../../renderer/logic/program/ladder/quick-log.ts';
import { toldEnglish } from '../../../../renderer/logic/texts/screens/told-english.ts';

const read = (text: string, known: string[] = []) =>
  readQuickLog(text, 'C-07', '2026-04-15', known, toldEnglish.ladder);

test('a week is seven short lines', () => {
  const { days, problems } = read('C-07\n8 20 2 4 0 e\n9 15 3 5 1 f\n10 -\n31 20 - - - h');
  expect(problems).toEqual([]);
  expect(days.map((day) => day.date)).toEqual(['2026-04-08', '2026-04-09', '2026-04-10', '2026-03-31']);
  expect(days[0]).toEqual({
    date: '2026-04-08',
    minutes: 20,
    fatigueBefore: 2,
    fatigueAfter: 4,
    pain: 0,
    felt: 'easy',
  });
  expect(days[2]).toMatchObject({ minutes: 0, pain: null, felt: null });
});

test('a log of another client is refused whole', () => {
  const { days, problems } = read('C-09\n8 20 2 4 0 e');
  expect(days).toEqual([]);
  expect(problems[0]).toContain('has the code C-09, and the record of C-07 is open');
});

test.each([
  ['8 20 2 4 12', 'pain must be a whole number from 0 to 10'],
  ['8 20 2 4 0 x', 'must be e, f or h'],
  ['8 20 2 4 0 e\n8 10', 'is logged already'],
  ['45 20', 'is no day of the last two months'],
  ['2026-05-01 20', 'lies in the future'],
])('%s: a sentence, and the other days stay', (text, sentence) => {
  const { problems, days } = read(`7 10\n${text}`);
  expect(problems.join(' ')).toContain(sentence);
  expect(days[0]?.date).toBe('2026-04-07');
});
