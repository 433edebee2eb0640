/** The timeline of a record, in order and in words. Days counted by hand. */
import { expect, test } from 'vitest';
import { newClient } from '../../../renderer/logic/caseload/new-client.ts';
import { timeline } from '../../../renderer/logic/caseload/timeline.ts';
import { timelineDays } from '../../../renderer/logic/caseload/timeline-words.ts';
import { toldEnglish } from '../../../renderer/logic/texts/screens/told-english.ts';
import { conditions, record, sample, stamp } from '../progress/facts.ts';

const ID = '018f7c1e-0000-4000-8000-000000000001';
const visit = (date: string) => ({
  ...stamp,
  id: `v-${date}`,
  date,
  kind: 'treatment' as const,
  minutes: null,
  nextVisit: '',
  told: '',
  skilled: '',
  response: '',
  taughtBack: '',
  plan: '',
});
const facts = record({
  client: { ...newClient(ID, 'Invented Person', 'C-01'), ...stamp, id: ID },
  visits: [visit('2026-02-02'), visit('2026-01-05')],
  samples: [
    sample('a', '2026-01-05', { baseline: true }),
    sample('b', '2026-02-02', { conditions: { ...conditions, pen: 'felt', doseState: 'off' } }),
  ],
  redFlags: [{ ...stamp, id: 'f', visitId: 'v-2026-02-02', flag: 'sudden', present: true, review: null, note: '' }],
  trials: [],
});

test('oldest first, within a day in the order of the kinds; pen and medicine only where they change', () => {
  expect(timeline(facts).map(({ day, kind }) => `${day} ${kind}`)).toEqual([
    '2026-01-05 visit',
    '2026-01-05 medicine',
    '2026-01-05 sample',
    '2026-01-05 pen',
    '2026-02-02 visit',
    '2026-02-02 flag',
    '2026-02-02 medicine',
    '2026-02-02 sample',
    '2026-02-02 pen',
  ]);
});

test('a day is one row in words, the newest first, and opens its visit', () => {
  const names = {
    visits: { first: 'first visit', treatment: 'treatment', retest: 'retest', discharge: 'discharge' },
    flags: new Map([['sudden', 'Sudden change']]),
    client: toldEnglish.client,
    inTable: (text: string) => text,
  };
  const days = timelineDays(timeline(facts), names);
  expect(days.map(({ day, visitId }) => [day, visitId])).toEqual([
    ['2026-02-02', 'v-2026-02-02'],
    ['2026-01-05', 'v-2026-01-05'],
  ]);
  expect(days[0]!.events.map(({ words }) => words)).toEqual([
    'treatment',
    'Sudden change',
    'off',
    'Everyday sentences',
    'felt',
  ]);
  expect(days[1]!.events.map(({ words }) => words)).toContain('Everyday sentences, baseline');
});
