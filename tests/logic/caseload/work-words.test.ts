/** The worklist in words, from the rule table's limits to the screen on which each thing is done. */
import { expect, test } from 'vitest';
import { rulesCurrent } from '../../../db/rules/index.ts';
import { toldEnglish } from '../../../renderer/logic/texts/screens/told-english.ts';
import { workLimits, type WorkItem } from '../../../renderer/logic/caseload/worklist.ts';
import { dueSentence, workWords } from '../../../renderer/logic/caseload/work-words.ts';

const item = (more: Partial<WorkItem>): WorkItem => ({
  clientId: 'c',
  code: 'C-01',
  group: 'read',
  kind: 'sample',
  due: '2026-04-15',
  days: 0,
  late: false,
  count: 1,
  on: '2026-04-10',
  hour: null,
  ...more,
});
const asIs = (iso: string) => iso;
const words = toldEnglish.worklist;

// Common practice, no source: the limits that the shipped table has.
test('the limits are rows of the rule table', () => {
  expect(workLimits(rulesCurrent().thresholds)).toEqual({
    certificationDays: 30,
    authorizationVisits: 2,
    noteDays: 1,
    sampleLateDays: 3,
    noVisitDays: 21,
    reportDaysAhead: 7,
    goalDaysAhead: 7,
  });
  expect(() => workLimits([])).toThrow(/work-certification-days/);
});

test.each([
  [{ kind: 'visit', group: 'today', on: null }, 'Visit', 'planned, not begun', 'client'],
  [{ kind: 'visit', group: 'today' }, 'Visit', 'begun', 'client'],
  [{}, 'One sample', 'written 2026-04-10, no reader yet', 'readback'],
  [{ count: 3 }, '3 samples', 'the first written 2026-04-10, no reader yet', 'readback'],
  [{ kind: 'visit-note' }, 'Visit note', 'of 2026-04-10, not written', 'client'],
  [{ kind: 'visit-note', count: 2 }, '2 visit notes', 'not written since 2026-04-10', 'client'],
  [{ kind: 'progress-report' }, 'Progress report', 'due 2026-04-10', 'pages'],
  [{ kind: 'certification', late: true }, 'Certification', 'ended 2026-04-10', 'client'],
  [{ kind: 'certification' }, 'Certification', 'ends 2026-04-10', 'client'],
  [{ kind: 'authorization', count: 0, on: null }, 'Authorized visits', 'all used', 'client'],
  [{ kind: 'authorization', count: -2, on: null }, 'Authorized visits', '2 more than authorized', 'client'],
  [{ kind: 'flag', count: 1, on: null }, 'One red flag', 'not reviewed', 'intake'],
  [{ kind: 'draft' }, 'Home program', 'draft of 2026-04-10', 'program'],
  [{ kind: 'co-sign-program' }, 'Home program', 'draft of 2026-04-10, not co-signed', 'program'],
  [{ kind: 'goal' }, 'Goal', 'to be reached by 2026-04-10', 'goals'],
  [{ kind: 'first-visit', on: null }, 'First visit', 'not seen yet', 'client'],
  [{ kind: 'no-visit-planned' }, 'No visit planned', 'last seen 2026-04-10', 'client'],
] as const)('%o', (more, what, stands, tab) => {
  expect(workWords(item(more as Partial<WorkItem>), asIs, words)).toMatchObject({ what, stands, tab });
});

test('the head says how much it is', () => {
  expect(dueSentence([], words)).toBe('');
  expect(dueSentence([item({})], words)).toBe('No visit today, 1 thing due');
  expect(dueSentence([item({ kind: 'visit' }), item({}), item({})], words)).toBe('1 visit today, 2 things due');
});
