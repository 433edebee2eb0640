/** One session, a visit for each, nothing of the others: common practice, no source. */
import { expect, test } from 'vitest';
import { groupVisits, mayJoin } from '../../../renderer/logic/caseload/group-session.ts';
import { Visit } from '../../../db/types/visit.ts';

const today = '2026-03-04';
const entry = (id: string, visits: number, more = {}) => ({
  id,
  code: `C-${id}`,
  name: `Name ${id}`,
  birthYear: null,
  diagnoses: '',
  lastVisit: null,
  visits,
  archivedOn: null,
  ...more,
});
let next = 0;
const newId = () => `00000000-0000-4000-8000-${String((next += 1)).padStart(12, '0')}`;

test('three clients get three visits of today, each for her own record only', () => {
  const ids = [newId(), newId(), newId()];
  const members = ids.map((id, i) => entry(id, i));
  const visits = groupVisits(members, today, newId);
  expect(visits.map((visit) => visit.clientId)).toEqual(ids);
  expect(visits.map((visit) => visit.kind)).toEqual(['first', 'treatment', 'treatment']);
  for (const [i, visit] of visits.entries()) {
    expect(Visit.parse({ ...visit, at: '2026-03-04T09:00:00Z', by: 'QM' }).groupOf).toBe(3);
    const others = members.filter((_, at) => at !== i).flatMap(({ id, name, code }) => [id, name, code]);
    for (const word of others) expect(JSON.stringify(visit)).not.toContain(word);
  }
});

test('one client is no group, and thirteen are too many', () => {
  const many = (n: number) => Array.from({ length: n }, (_, i) => entry(String(i), 1));
  expect(() => groupVisits(many(1), today, newId)).toThrow(RangeError);
  expect(() => groupVisits(many(13), today, newId)).toThrow(RangeError);
});

test('who is archived or has a visit of today already cannot join', () => {
  const all = [entry('a', 1), entry('b', 1, { lastVisit: today }), entry('c', 1, { archivedOn: '2026-01-01' })];
  expect(mayJoin(all, today).map(({ id }) => id)).toEqual(['a']);
});
