/** What the worklist takes from a record. Days counted by hand on a calendar. */
import { expect, test } from 'vitest';
import type { ClientRecord } from '../../../db/types/record.ts';
import { WorkFacts } from '../../../electron/contract/caseload.ts';
import { newClient } from '../../../renderer/logic/caseload/new-client.ts';
import { workFactsOf } from '../../../renderer/logic/caseload/work-facts.ts';
import { reading, record, sample, stamp } from '../progress/facts.ts';

const ID = '018f7c1e-0000-4000-8000-000000000001';
const today = '2026-04-15';
const visit = (date: string, skilled = 'seen'): ClientRecord['visits'][number] => ({
  ...stamp,
  id: `v-${date}`,
  date,
  kind: 'treatment',
  minutes: 45,
  nextVisit: '',
  told: '',
  skilled,
  response: '',
  taughtBack: '',
  plan: '',
});
const of = (over: Partial<ClientRecord>, care: ClientRecord['client']['care'] = undefined) =>
  workFactsOf(
    record({
      client: { ...newClient(ID, 'Invented Person', 'C-01'), ...stamp, id: ID, ...(care && { care }) },
      visitPlans: [],
      issuedPages: [],
      ...over,
    }),
    0,
    today,
  );

test('a new client asks for nothing, and the facts fit the contract', () => {
  const facts = of({});
  expect(WorkFacts.safeParse(facts).success).toBe(true);
  expect(facts).toMatchObject({
    lastVisit: null,
    visitToday: false,
    unreadSince: [],
    notesUnwritten: [],
    nextOn: null,
  });
});

test('only samples with a text that somebody is to read wait for a reader', () => {
  const samples = [
    sample('read', '2026-04-01'),
    sample('unread', '2026-04-08'),
    sample('own', '2026-04-08', { task: { kind: 'personal', textCodes: [], text: 'mine', spellingNoted: false } }),
    sample('no-text', '2026-04-08', { task: { kind: 'sentences', textCodes: [], text: '', spellingNoted: false } }),
  ];
  expect(of({ samples, readings: [reading('read', 18)] }).unreadSince).toEqual(['2026-04-08']);
});

test('a note counts as open while no judgement is written; a visit of today may still be written', () => {
  const visits = [visit('2026-04-01'), visit('2026-04-08', ' '), visit(today, '')];
  expect(of({ visits })).toMatchObject({ notesUnwritten: ['2026-04-08'], visitToday: true, lastVisit: today });
});

test('the plan written last holds, with its hour', () => {
  const plan = (at: string, nextOn: string, hour: string): ClientRecord['visitPlans'][number] => ({
    ...stamp,
    at,
    id: at,
    visitId: 'v',
    nextOn,
    hour,
    dose: '',
    retest: null,
    trialId: null,
    questions: '',
  });
  const visitPlans = [
    plan('2026-04-08T10:00:00.000Z', today, '11:00'),
    plan('2026-04-01T10:00:00.000Z', '2026-04-08', '9:00'),
  ];
  expect(of({ visitPlans })).toMatchObject({ nextOn: today, nextHour: '11:00' });
});
