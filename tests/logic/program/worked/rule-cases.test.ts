/**
 * Each rule of the table has a worked clinical case of its own, written from the clinical notes and not from the
 * rule's condition, with a near miss: one fact changed, and the rule is silent.
 */
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { rulesCurrent } from '../../../../db/rules/index.ts';
import { wrongWithCase } from './judge-case.ts';
import { RuleCase } from './rule-case.ts';
import { ThresholdCase, wrongWithThreshold } from './threshold-case.ts';
import { VetoCase, wrongWithVeto } from './veto-case.ts';

const rules = rulesCurrent();
const folder = join(import.meta.dirname, '../cases');
const fileOf = (id: string): string => join(folder, `${id}.json`);

test('every rule has its case, and every case its rule', () => {
  expect(rules.rules.filter(({ id }) => !existsSync(fileOf(id))).map(({ id }) => id)).toEqual([]);
  const ids = new Set(rules.rules.map(({ id }) => id));
  const files = readdirSync(folder).filter((name) => /^[RW]\d/.test(name));
  expect(files.filter((name) => !ids.has(name.replace('.json', '')))).toEqual([]);
});

test.each(rules.rules.map(({ id }) => id))('case of %s', (id) => {
  const data = RuleCase.parse(JSON.parse(readFileSync(fileOf(id), 'utf8')));
  expect(wrongWithCase(id, data, rules)).toEqual([]);
});

const vetoCases = VetoCase.array().parse(JSON.parse(readFileSync(fileOf('vetoes'), 'utf8')));
const thresholdCases = ThresholdCase.array().parse(JSON.parse(readFileSync(fileOf('thresholds'), 'utf8')));

test('every veto has its case', () => {
  const ids = new Set(vetoCases.map((each) => each.id));
  expect(rules.vetoes.filter((veto) => !ids.has(veto.id)).map((veto) => veto.id)).toEqual([]);
});

test.each(vetoCases.map((each) => [each.id, each] as const))('case of %s', (_, data) => {
  expect(wrongWithVeto(data, rules)).toEqual([]);
});

test.each(thresholdCases.map((each) => [each.code, each] as const))('%s is what the notes say', (_, data) => {
  expect(wrongWithThreshold(data, rules)).toEqual([]);
});
