/** CLINICAL-2 e: the decision of a trial feeds the pen line and the pages. */
import { expect, test } from 'vitest';
import { rulesInUse } from '../../../../db/rules/in-use.ts';
import type { Trial } from '../../../../db/types/occasions.ts';
import { compose } from '../../../../renderer/logic/program/draft/compose.ts';
import { programInput } from '../../../../renderer/logic/program/facts/from-record.ts';
import { speakerOf } from '../../../../renderer/logic/texts/said-line.ts';
import { clientId, id, record, visitIds } from '../../pages/record.ts';
import { client } from '../support.ts';

const rules = rulesInUse(null);
const trial = (more: Partial<Trial>): Trial => ({
  id: id(),
  at: '2026-04-15T09:00:00.000Z',
  by: 'JM',
  clientId,
  visitId: visitIds[1],
  kind: 'pen',
  options: [{ name: 'thick gel pen' }, { name: 'soft pencil' }],
  seed: 1,
  lines: [],
  wish: null,
  decision: { option: 1, on: '2026-04-15', why: 'Read better.' },
  retrialOn: null,
  status: 'decided',
  ...more,
});
const chosenOf = (...trials: Trial[]) =>
  programInput(
    record((r) => void (r.trials = trials)),
    rules,
  ).chosenPen;

test('the latest decided trial of pens names the pen; none, an open one or another kind does not', () => {
  expect(chosenOf(trial({}))).toBe('soft pencil');
  const later = trial({ decision: { option: 0, on: '2026-04-20', why: '' } });
  expect(chosenOf(later, trial({}))).toBe('thick gel pen');
  expect(chosenOf()).toBeUndefined();
  expect(chosenOf(trial({ decision: null, status: 'stopped' }))).toBeUndefined();
  expect(chosenOf(trial({ kind: 'paper' }))).toBeUndefined();
  expect(chosenOf(trial({ decision: { option: null, on: '2026-04-15', why: 'none of them' } }))).toBeUndefined();
});

test('the draft has one line about the pen, with its name, in both languages, and asks for no other trial', () => {
  const draft = compose({ ...client({ grasp: 2 }), chosenPen: 'soft pencil' }, rules);
  const pens = draft.lines.filter((line) => line.item === 'pen-line');
  expect(pens.map((line) => line.text)).toEqual(['Use the pen that we chose with you: soft pencil.']);
  expect(draft.lines.some((line) => line.item === 'pen-trial')).toBe(false);
  expect(speakerOf(rules, 'es').line(pens[0]!).text).toBe('Use el bolígrafo que elegimos con usted: soft pencil.');
});
