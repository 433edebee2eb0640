/**
 * Clients as an occupational therapist would meet them, written from the clinical notes (CLINICAL, CLINICAL-2; common
 * practice, no source) without a look at the rules: what their home program must and must not hold.
 */
import { expect, test } from 'vitest';
import { compose } from '../../renderer/logic/program/draft/compose.ts';
import { readFindings } from '../../renderer/logic/program/facts/read-findings.ts';
import { amountClashes } from '../logic/program/amounts.ts';
import { rules } from '../logic/program/support.ts';
import { workedCases, wrongWith } from './judge.ts';

const cases = [
  'stroke-and-brain',
  'movement',
  'hand-and-joint',
  'weak-and-tired',
  'senses-set-up-wishes',
  'two-conditions-and-homes',
  'mixed-and-rare',
].flatMap((name) => workedCases(`${name}.json`));

test.each(cases.map((each) => [each.name, each] as const))('%s', (_name, each) => {
  expect(wrongWith(each, rules)).toEqual([]);
  const read = readFindings(each.findings, rules);
  expect(read.ok && amountClashes(compose(read.input, rules).lines)).toEqual([]);
});

test('every case has a name of its own and says what a therapist expects', () => {
  expect(new Set(cases.map((each) => each.name)).size).toBe(cases.length);
  expect(cases.length).toBeGreaterThanOrEqual(138);
  for (const each of cases) expect(each.mustInclude.length + each.mustNot.length).toBeGreaterThan(0);
});
