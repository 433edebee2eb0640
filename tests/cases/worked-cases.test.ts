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
import { toldShortly } from './told-shortly.ts';

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

const short = ['told-shortly.json', 'pairs-and-edges.json'].flatMap((name) => toldShortly(name, rules));

test.each(short.map((each) => [each.name, each] as const))('%s', (_name, each) => {
  expect(wrongWith(each, rules)).toEqual([]);
  const read = readFindings(each.findings, rules);
  const { lines, page } = compose((read as Extract<typeof read, { ok: true }>).input, rules);
  expect(amountClashes(lines)).toEqual([]);
  const said = [...lines.flatMap(({ text, cautions }) => [text, ...cautions]), ...page].join('\n');
  expect(each.unsaid.filter((words) => said.includes(words))).toEqual([]);
});

test('every case has a name of its own and says what a therapist expects', () => {
  const all = [...cases, ...short];
  expect(new Set(all.map((each) => each.name)).size).toBe(all.length);
  expect(all.length).toBeGreaterThanOrEqual(384);
  for (const each of all) expect(each.mustInclude.length + each.mustNot.length).toBeGreaterThan(0);
});
