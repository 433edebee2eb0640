import { retold } from '../../../renderer/logic/texts/retold.ts';
import { screensIn } from '../../../renderer/logic/texts/screens/screen-languages.ts';
import { expect, test } from 'vitest';
import { rulesCurrent } from '../../../db/rules/index.ts';
import { isTooDeep, lineOfPath } from '../../../renderer/logic/program/clinic/json-lines.ts';
import {
  noClinicRules,
  readClinicRules,
  withOwn,
  withRole,
  writeClinicRules,
} from '../../../renderer/logic/program/clinic/own-rules.ts';
import { tryOnCaseload, trialWords } from '../../../renderer/logic/program/clinic/clinic-trial.ts';
import { itemFromForm, nextRuleId, ruleFromForm } from '../../../renderer/logic/program/clinic/rule-forms.ts';
import { client, rules } from './support.ts';
import { toldEnglish } from '../../../renderer/logic/texts/screens/told-english.ts';

const form = {
  findings: [{ code: 'trunk', atMost: 2 as const }],
  cautions: [],
  diagnoses: [],
  item: 'posture-break',
  because: 'Our clients sit long.',
  role: 'other' as const,
};

const withRule = () => {
  const clinic = noClinicRules(rules);
  const made = ruleFromForm(form, nextRuleId(clinic), toldEnglish.ruleWords);
  if (!made.ok) throw new Error(made.reason);
  return withOwn(clinic, { rule: made.rule });
};

test('a rule made in plain words joins the table under an id of its own', () => {
  const clinic = withRule();
  expect(clinic.rules[0]).toMatchObject({ id: 'C01', source: 'clinic' });
  expect(nextRuleId(clinic)).toBe('C02');
  expect(rulesCurrent(clinic).rules.at(-1)?.id).toBe('C01');
});

test('an unfinished form says what is missing', () => {
  expect(ruleFromForm({ ...form, findings: [] }, 'C01', toldEnglish.ruleWords)).toEqual({
    ok: false,
    reason: expect.stringContaining('finding'),
  });
  expect(ruleFromForm({ ...form, item: '' }, 'C01', toldEnglish.ruleWords)).toEqual({
    ok: false,
    reason: expect.stringContaining('gives'),
  });
  expect(ruleFromForm({ ...form, because: ' ' }, 'C01', toldEnglish.ruleWords)).toEqual({
    ok: false,
    reason: expect.stringContaining('why'),
  });
});

test('a rule is tried on the caseload before it counts', () => {
  const inputs = [client(), client({ trunk: 2 }), client({ neck: 2 })];
  const trial = tryOnCaseload(inputs, rules, rulesCurrent(withRule()), inputs);
  // A neck that strains has the break by the shipped table already.
  expect(trial).toMatchObject({ changed: 1, of: 3, clients: [1] });
  const words = toldEnglish.ruleWords;
  expect(trialWords({ ...trial, clients: [] }, words)).toBe('Would change 1 of 3 drafts.');
  expect(trialWords({ ...trial, clients: ['K-02'] }, words)).toBe('Would change 1 of 3 drafts. Of: K-02.');
  const many = Array.from({ length: 14 }, (_, i) => `K-${i + 1}`);
  expect(trialWords({ changed: 14, of: 20, clients: many }, words)).toMatch(/K-12 and 2 more\.$/);
  expect(trialWords({ changed: 0, of: 3, clients: [] }, words)).toBe('Would change 0 of 3 drafts.');
});

test('a file written by one clinic is read by another', () => {
  const clinic = withRule();
  expect(readClinicRules(writeClinicRules(clinic), rules)).toEqual({ ok: true, rules: clinic, asks: [] });
});

test('a file of format 1 takes roles from its ids; a rule that gives writing and does not say its part is asked about', () => {
  const { role: _unknown, ...old } = withRule().rules[0]!;
  const writing = rules.items.find(({ kind }) => kind === 'writing')!.code;
  const file = {
    ...noClinicRules(rules),
    formatVersion: 1,
    rules: [
      { ...old, id: 'W20', gives: [writing] },
      { ...old, id: 'C01', gives: [writing] },
      { ...old, id: 'C02' },
    ],
  };
  const read = readClinicRules(JSON.stringify(file), rules);
  if (!read.ok) throw new Error(read.problems[0]!.reason);
  expect(read.rules.rules.map(({ id, role }) => [id, role])).toEqual([
    ['W20', 'main-writing'],
    ['C01', 'other'],
    ['C02', 'other'],
  ]);
  expect(read.asks).toEqual(['C01']);
  const answered = withRole(read.rules, 'C01', 'main-writing');
  expect(readClinicRules(writeClinicRules(answered), rules)).toEqual({ ok: true, rules: answered, asks: [] });
});

test.each([
  ['no JSON', (text: string) => text.replace('"items"', 'items'), /cannot be read from here/],
  ['another format', (text: string) => text.replace('fairhand-clinic-rules', 'other'), /not a rule file/],
  ['another version', (text: string) => text.replace('"formatVersion": 2', '"formatVersion": 3'), /version 3/],
  ['a finding that nobody knows', (text: string) => text.replace('"trunk"', '"ghost"'), /no finding "ghost"/],
  ['an item that does not exist', (text: string) => text.replace('"posture-break"', '"ghost"'), /no item "ghost"/],
  [
    'a wrong type',
    (text: string) => text.replace('"atMost": 2', '"atMost": "two"'),
    /^In "atMost" stands "two", but it has to be a number\.$/,
  ],
])('a file with %s is refused with its line', (_what, spoil, says) => {
  const text = spoil(writeClinicRules(withRule()));
  const read = readClinicRules(text, rules);
  expect(read.ok).toBe(false);
  if (read.ok) return;
  const { line, reason } = read.problems[0]!;
  expect(reason).toMatch(says);
  expect(line).toBeGreaterThanOrEqual(1);
  const there = text
    .split('\n')
    .slice(Math.max(0, line - 3), line + 4)
    .join('\n');
  if (text.includes('ghost')) expect(there).toContain('ghost');
});

test('what is wrong is told in the language of the screens', () => {
  const text = writeClinicRules(withRule()).replace('"atMost": 2', '"atMost": "two"');
  const told = (['es', 'de'] as const).map((language) => {
    const read = readClinicRules(text, rules, screensIn(language).told.ruleFile);
    return read.ok ? '' : read.problems[0]!.reason;
  });
  expect(told).toEqual([
    'En "atMost" pone "two", pero tiene que ser un número.',
    'In "atMost" steht "two"; nötig ist eine Zahl.',
  ]);
});

test('what the checks of the table find is told in the language of the screens', () => {
  const english = screensIn('en').told.ruleChecks;
  const told = (['es', 'de'] as const).map((language) => {
    const say = retold(english, screensIn(language).told.ruleChecks, (text) => text);
    return ['"trunk"', '"posture-break"'].map((code) => {
      const read = readClinicRules(writeClinicRules(withRule()).replace(code, '"ghost"'), rules);
      return read.ok ? '' : say(read.problems[0]!.reason.replace(/\.$/, ''));
    });
  });
  expect(told).toEqual([
    ['El vocabulario no tiene el hallazgo "ghost"', 'No hay ningún elemento "ghost"'],
    ['Das Vokabular kennt den Befund "ghost" nicht', 'Es gibt keinen Eintrag "ghost"'],
  ]);
});

test.each([
  ['a cycle', { next: 'own-dough' }, /comes back to itself/],
  ['a missing caution', { cautions: [] }, /can hurt \(putty\), so it needs a caution/],
  ['a caution that nobody wrote', { cautions: ['ghost'] }, /no caution text "ghost"/],
  ['a tier in quotes', { tier: '1' }, /^In "tier" stands "1", but it has to be one of 0, 1, 2, 3, 4\.$/],
  ['no text', { text: undefined }, /^"text" is missing: it has to be words in quotes\.$/],
  ['a key of its own', { color: 'red' }, /^"color" is not known here\.$/],
])('an exercise with %s is refused with its line and the reason', (_what, change, says) => {
  const words = { title: 'Dough', text: 'Squeeze the dough.', dose: 'hand-short', hazards: [], cautions: [] };
  const item = itemFromForm({ ...words, kind: 'exercise', tier: 1 }, 'own-dough');
  const file = withOwn(noClinicRules(rules), { item });
  const text = JSON.stringify({ ...file, items: [{ ...item, ...change }] }, null, 2);
  const read = readClinicRules(text, rules);
  expect(read.ok).toBe(false);
  if (read.ok) return;
  expect(read.problems[0]!.reason).toMatch(says);
  const [key] = Object.keys(change);
  const lines = text.split('\n');
  const at = lines.findIndex((line) => line.includes(`"${key}"`)) + 1;
  const first = lines.findIndex((line) => line.includes('"own-dough"')) + 1;
  // A missing key has no line: its exercise is named instead.
  expect([at, first, first - 1]).toContain(read.problems[0]!.line);
});

test('a hostile rule file is refused at once: thousands of problems, thousands of levels', () => {
  const many = JSON.stringify({ ...noClinicRules(rules), items: Array.from({ length: 20_000 }, () => 1) });
  const read = readClinicRules(many, rules);
  expect(!read.ok && read.problems.length).toBe(25);
  for (const depth of [200, 100_000]) {
    const deep = JSON.stringify(noClinicRules(rules)).replace(
      '"items":[]',
      `"items":${'['.repeat(depth)}${']'.repeat(depth)}`,
    );
    expect(readClinicRules(deep, rules)).toEqual({
      ok: false,
      problems: [{ line: 1, reason: 'The file is nested too deep for a rule file.' }],
    });
  }
  expect(isTooDeep(`{"a":"${'['.repeat(500)}\\\\\\""}`)).toBe(false);
});

test('the line of a value is found under keys, indexes and escapes', () => {
  const text = '{\n "a": "x\\"}",\n "b": [\n  1,\n  {"c":\n   true}\n ]\n}';
  expect(lineOfPath(text, ['a'])).toBe(2);
  expect(lineOfPath(text, ['b', 1])).toBe(5);
  expect(lineOfPath(text, ['b', 1, 'c'])).toBe(6);
  expect(lineOfPath(text, ['b', 7])).toBe(3);
});

test('an own exercise is judged by what its words give away', () => {
  const item = itemFromForm(
    {
      title: 'Dough',
      text: 'Squeeze the dough quickly.',
      kind: 'exercise',
      tier: 1,
      dose: 'hand-short',
      hazards: [],
      cautions: [],
    },
    'own-dough',
  );
  expect(item.hazards).toEqual(expect.arrayContaining(['putty', 'resistance', 'brisk']));
  expect(item.cautions).toContain('stop-pain');
  expect(item.dependsOn).toContain('tone');
  expect(() => rulesCurrent(withOwn(noClinicRules(rules), { item }))).not.toThrow();
});
