import { expect, test } from 'vitest';
import type { WorkFacts } from '../../../electron/contract/caseload.ts';
import { dueWords } from '../../../renderer/logic/caseload/work-words.ts';
import { type WorkLimits, worklist } from '../../../renderer/logic/caseload/worklist.ts';
import { toldEnglish } from '../../../renderer/logic/texts/screens/told-english.ts';

const limits: WorkLimits = {
  certificationDays: 30,
  authorizationVisits: 2,
  noteDays: 1,
  sampleLateDays: 3,
  noVisitDays: 21,
  reportDaysAhead: 7,
  goalDaysAhead: 7,
};
const today = '2026-04-15';
const facts = (more: Partial<WorkFacts>): WorkFacts => ({
  clientId: 'c',
  code: 'C-01',
  archived: false,
  discharged: false,
  lastVisit: '2026-04-10',
  visitToday: false,
  nextOn: '2026-04-20',
  nextHour: null,
  unreadSince: [],
  reportDue: null,
  notesUnwritten: [],
  notCoSigned: [],
  certifiedUntil: null,
  authorizedLeft: null,
  draftSince: null,
  draftNotCoSigned: false,
  goalsDue: [],
  flagsOpen: 0,
  ...more,
});
const of = (more: Partial<WorkFacts>) => worklist([facts(more)], today, limits);

// Days counted by hand on a calendar.
test.each([
  ['an unread sample waits at once', { unreadSince: ['2026-04-14'] }, 'sample', 'in 2 days'],
  ['and is late after three days', { unreadSince: ['2026-04-10'] }, 'sample', '2 days late'],
  ['an entry that nobody co-signed is due a day later', { notCoSigned: ['2026-04-14'] }, 'co-sign', 'today'],
  ['certification warns at 30 days', { certifiedUntil: '2026-05-01' }, 'certification', 'in 16 days'],
  ['and says how late it is', { certifiedUntil: '2026-03-28' }, 'certification', '18 days late'],
  ['a report', { reportDue: today }, 'progress-report', 'today'],
  ['two authorized visits left', { authorizedLeft: 2 }, 'authorization', 'now'],
  ['a note after a day', { notesUnwritten: ['2026-04-13'] }, 'visit-note', '1 day late'],
  ['an open flag', { flagsOpen: 1 }, 'flag', 'now'],
  ['a draft', { draftSince: '2026-04-10' }, 'draft', '5 days late'],
  [
    'a draft that nobody co-signed',
    { draftSince: '2026-04-10', draftNotCoSigned: true },
    'co-sign-program',
    '5 days late',
  ],
  ['a goal', { goalsDue: ['2026-04-16'] }, 'goal', 'in 1 day'],
  ['no visit planned', { nextOn: null, lastVisit: '2026-03-20' }, 'no-visit-planned', '5 days late'],
] as const)('%s', (_name, more, kind, words) => {
  const [item] = of(more as unknown as Partial<WorkFacts>);
  expect(item?.kind).toBe(kind);
  expect(dueWords(item!, toldEnglish.worklist)).toBe(words);
});

test('a client who was never seen waits for the first visit', () => {
  expect(of({ nextOn: null, lastVisit: null }).map(({ kind }) => kind)).toEqual(['first-visit']);
  expect(of({ lastVisit: null })).toEqual([]);
});

test('what is far away, archived or discharged asks for nothing', () => {
  expect(of({})).toEqual([]);
  expect(of({ certifiedUntil: '2026-06-30', goalsDue: ['2026-09-01'], authorizedLeft: 9 })).toEqual([]);
  expect(of({ archived: true, flagsOpen: 2 })).toEqual([]);
  expect(of({ discharged: true, nextOn: null, lastVisit: '2025-01-01' })).toEqual([]);
});

test('flags first, then today, then what waits longest', () => {
  const list = worklist(
    [
      facts({ code: 'C-02', unreadSince: ['2026-04-10'] }),
      facts({ code: 'C-03', unreadSince: ['2026-04-01'] }),
      facts({ code: 'C-04', visitToday: true }),
      facts({ code: 'C-05', flagsOpen: 1 }),
    ],
    today,
    limits,
  );
  expect(list.map((item) => item.code)).toEqual(['C-05', 'C-04', 'C-03', 'C-02']);
});
