import { expect, test } from 'vitest';
import { exerciseDrawings } from '../../../renderer/logic/pages/drawings/exercise-drawings.ts';
import { readRuleTable, RuleTableError, rulesCurrent, shippedTable } from '../../../db/rules/index.ts';
import { risky } from '../../../db/types/rule-table/rule-checks.ts';
import type { RuleTable } from '../../../db/types/rules.ts';
import { noClinicRules } from '../../../renderer/logic/program/clinic/own-rules.ts';
import { type RulingCode, rulings } from '../../../renderer/logic/pages/practice/ruling-drawings.ts';

const rules = rulesCurrent();

/** The shipped table with one thing spoiled. */
const spoiled = (spoil: (table: RuleTable) => void): (() => RuleTable) => {
  const table = structuredClone(shippedTable) as unknown as RuleTable;
  spoil(table);
  return () => readRuleTable(table);
};

test('the shipped table is sound and carries its version', () => {
  expect(rules.version).toMatch(/^\d{4}\.\d+$/);
  expect(rules.rules.length).toBeGreaterThan(100);
});

test('every corrected rule of the clinical notes is there, or is a red flag', () => {
  const ids = new Set(rules.rules.map((rule) => rule.id));
  const wanted = Array.from({ length: 60 }, (_, i) => `R${String(i + 1).padStart(2, '0')}`);
  // R01 stops the program, R44 is a red flag.
  expect(wanted.filter((id) => !ids.has(id))).toEqual(['R01', 'R44']);
  expect(rules.flagRules.map((rule) => rule.id)).toContain('R44');
});

test.each([
  ['an unknown finding', (t: RuleTable) => (t.rules[0]!.when = { finding: 'ghost', atMost: 1 }), /no finding "ghost"/],
  ['an unknown detail', (t: RuleTable) => (t.rules[0]!.when = { detail: 'tremor', is: ['ghost'] }), /"ghost"/],
  ['an unknown caution', (t: RuleTable) => (t.vetoes[0]!.when = { caution: 'ghost' }), /no caution "ghost"/],
  [
    'an unknown measure',
    (t: RuleTable) => (t.rules[0]!.when = { measure: 'ghost', below: 'zero' }),
    /no measure "ghost"/,
  ],
  [
    'an unknown threshold',
    (t: RuleTable) => (t.rules[0]!.when = { measure: 'x-height', below: 'ghost' }),
    /no threshold/,
  ],
  ['an item that does not exist', (t: RuleTable) => t.rules[0]!.gives.push('ghost'), /no item "ghost"/],
  ['a missing caution text', (t: RuleTable) => t.items[0]!.cautions.push('ghost'), /no caution text "ghost"/],
  [
    'a chain that bites its tail',
    (t: RuleTable) => {
      const item = t.items.find((each) => each.next !== null)!;
      t.items.find((each) => each.code === item.next)!.next = item.code;
    },
    /comes back to itself/,
  ],
  ['the same code twice', (t: RuleTable) => t.items.push(structuredClone(t.items[0]!)), /stands twice/],
  ['a wrong type', (t: RuleTable) => ((t.thresholds[0] as { value: unknown }).value = 'much'), /thresholds\.0\.value/],
  ['another version', (t: RuleTable) => ((t as { version: string }).version = 'next'), /version/],
  [
    'a field that nobody knows',
    (t: RuleTable) => ((t.rules[0] as Record<string, unknown>)['if'] = 'prose'),
    /rules\.0/,
  ],
  ['a threshold out of its range', (t: RuleTable) => (t.thresholds[0]!.value = 99), /must lie between/],
])('a table with %s is refused, with place and reason', (_what, spoil, says) => {
  const read = spoiled(spoil);
  expect(read).toThrow(RuleTableError);
  expect(read).toThrow(says);
});

test('an item that can hurt is refused without a caution', () => {
  const read = spoiled(
    (table) => (table.items.find((item) => item.hazards.some((each) => risky.has(each)))!.cautions = []),
  );
  expect(read).toThrow(/can hurt .* needs a caution/);
});

test('every number that drives a rule carries its source', () => {
  for (const row of rules.thresholds) expect(row.source, row.code).toBeTruthy();
});

test("the clinic's changes lie over the shipped table and leave it unharmed", () => {
  const clinic = { ...noClinicRules(rules), revision: 1, thresholds: { 'legibility-good': 85 }, off: ['R05'] };
  const merged = rulesCurrent(clinic);
  expect(merged.version).toBe(`${rules.version}+clinic.1`);
  expect(merged.thresholds.find((each) => each.code === 'legibility-good')).toMatchObject({
    value: 85,
    source: 'clinic',
  });
  expect(merged.rules.some((each) => each.id === 'R05')).toBe(false);
  expect(rulesCurrent().rules.some((each) => each.id === 'R05')).toBe(true);
});

test('a clinic may reword a shipped exercise, never strip it of what can forbid it', () => {
  const putty = rules.items.find((each) => each.code === 'putty-pinch')!;
  const harmless = { ...putty, kind: 'advice' as const, title: 'Press', hazards: [], dependsOn: [], cautions: [] };
  const merged = rulesCurrent({ ...noClinicRules(rules), revision: 1, items: [harmless] });
  const kept = merged.items.find((each) => each.code === 'putty-pinch')!;
  expect(kept).toMatchObject({ title: 'Press', kind: 'exercise' });
  expect(kept.hazards).toEqual(expect.arrayContaining(putty.hazards));
  expect(kept.dependsOn).toEqual(expect.arrayContaining(putty.dependsOn));
  expect(kept.cautions).toEqual(expect.arrayContaining(putty.cautions));
});

test('every paper can be printed, in rows of its own size', () => {
  for (const paper of rules.papers) {
    const ruling = rulings[paper.ruling as RulingCode];
    expect(ruling, paper.code).toBeDefined();
    if (paper.family !== 'plain') expect(ruling.sizeMm, paper.code).toBeCloseTo(paper.rowMm, 2);
  }
});

test('rows hold the letters they are chosen for', () => {
  for (const paper of rules.papers) {
    const ruling = rulings[paper.ruling as RulingCode];
    if (paper.xHeightToMm !== null) expect(paper.xHeightToMm, paper.code).toBeLessThanOrEqual(ruling.xHeightMm + 0.01);
  }
});

test('each language has something to write on every tier, and a sheet of pictures', () => {
  for (const language of new Set(rules.contents.map((each) => each.language))) {
    const own = rules.contents.filter((each) => each.language === language);
    for (const tier of [1, 2, 3, 4] as const)
      expect(
        own.some((each) => each.tier.includes(tier)),
        `${language} ${tier}`,
      ).toBe(true);
    expect(
      own.some((each) => each.kind === 'pictures'),
      language,
    ).toBe(true);
  }
});

test('every drawing that an item names is drawn, and all that is done has one', () => {
  for (const item of rules.items) {
    if (item.drawing !== null) expect(exerciseDrawings[item.drawing], `${item.code}: ${item.drawing}`).toBeDefined();
    if (['warm-up', 'exercise', 'writing', 'setup'].includes(item.kind)) expect(item.drawing, item.code).not.toBeNull();
  }
});
