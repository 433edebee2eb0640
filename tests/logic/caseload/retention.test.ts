/** Which records are due. Days by hand from the calendar; the rule itself is the clinic's: no source, none ships. */
import { expect, test } from 'vitest';
import { recordsDue } from '../../../renderer/logic/caseload/retention.ts';

const record = (lastVisit: string | null, lastChange = '2024-01-01') => ({ lastVisit, lastChange });

test('without a rule nothing is ever due', () => {
  expect(recordsDue([record('1990-01-01')], null, '2026-11-27')).toEqual([]);
});

test('a record is kept to the end of the last day of its years, and is due on the next', () => {
  const of = (today: string) => recordsDue([record('2016-11-27')], 10, today).length;
  expect([of('2026-11-26'), of('2026-11-27'), of('2026-11-28')]).toEqual([0, 0, 1]);
});

test('29 February counts to 28 February of a year without one', () => {
  const [due] = recordsDue([record('2016-02-29')], 10, '2026-03-01');
  expect(due).toMatchObject({ since: '2016-02-29', until: '2026-02-28', why: 'last-visit' });
});

test('without a visit the last change counts, and says so; a visit still to come keeps its record', () => {
  expect(recordsDue([record(null, '2010-05-01')], 10, '2026-11-27')).toMatchObject([
    { since: '2010-05-01', why: 'no-visit', until: '2020-05-01' },
  ]);
  expect(recordsDue([record('2027-01-01', '2010-05-01')], 10, '2026-11-27')).toEqual([]);
});

test('who has waited longest stands first', () => {
  const due = recordsDue([record('2012-01-01'), record('2001-01-01'), record('2005-06-30')], 10, '2026-11-27');
  expect(due.map(({ since }) => since)).toEqual(['2001-01-01', '2005-06-30', '2012-01-01']);
});
