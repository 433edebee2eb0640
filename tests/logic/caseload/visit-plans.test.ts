/** What was planned for today: at the visit right before, common practice, no source. */
import { expect, test } from 'vitest';
import { planBefore, visitBefore } from '../../../renderer/logic/caseload/visit-plans.ts';

const visits = [
  { id: 'a', date: '2026-03-01' },
  { id: 'c', date: '2026-03-15' },
  { id: 'b', date: '2026-03-08' },
];
const planOf = (visitId: string, at: string) => ({ visitId, at });

test('a plan holds for the visit after it: what was planned two visits ago is no plan any more', () => {
  const record = { visits, visitPlans: [planOf('a', '2026-03-01T10:00:00Z'), planOf('a', '2026-03-01T11:00:00Z')] };
  expect(planBefore(record as never, 'b')).toEqual(planOf('a', '2026-03-01T11:00:00Z'));
  expect(planBefore(record as never, 'c')).toBeNull();
  expect(planBefore(record as never, 'a')).toBeNull();
});

test('the visit before is told by day, whatever the order of the record', () => {
  expect(visitBefore(visits, 'c')?.id).toBe('b');
  expect(visitBefore(visits, 'a')).toBeNull();
  expect(visitBefore(visits, 'none')).toBeNull();
});
