import { expect, test } from 'vitest';
import { latestSetUp, setUpInput } from '../../../renderer/logic/record/latest-set-up.ts';
import { rulesInUse } from '../../../db/rules/in-use.ts';
import { setupOf } from '../../../renderer/logic/pages/sheet/page-facts.ts';
import { programInput } from '../../../renderer/logic/program/facts/from-record.ts';
import { id, input, record, visitIds } from '../pages/record.ts';

const rules = rulesInUse(null);

/** Measured at the second visit, then the first visit’s measures were corrected: saved last, but not the latest. */
const corrected = () =>
  record((r) => {
    const first = r.setups[0]!;
    r.setups = [
      { ...first, id: id(), visitId: visitIds[1], table: 850, at: '2026-03-25T09:00:00.000Z' },
      { ...first, table: 735, at: '2026-04-15T09:00:00.000Z' },
    ];
  });

test('the latest set-up is that of the latest visit, whichever was saved last, for the draft and for the page alike', () => {
  const made = corrected();
  expect(latestSetUp(made)?.table).toBe(850);
  const found = programInput(made, rules).findings.map(({ code }) => code);
  expect(found).toContain('table-too-high');
  expect(setupOf(input({ record: made }))?.footrestMm).toBeGreaterThan(60);
  expect(latestSetUp({ visits: made.visits, setups: [] })).toBeNull();
});

test('hand and cautions come from the client and the answers, wherever the set-up is asked for', () => {
  const made = record((r) => {
    r.client.handNow = 'left';
    r.client.precautions = [{ code: 'wheelchair', text: '' }] as typeof r.client.precautions;
    const field = r.intakeAnswers.find(({ item }) => item === 'field')!;
    field.grade = 1;
    r.setups[0]!.hand = null;
  });
  const given = setUpInput(made, latestSetUp(made)!);
  expect(given.hand).toBe('left');
  expect(given.cautions).toEqual(['wheelchair', 'neglect-or-field']);
});
