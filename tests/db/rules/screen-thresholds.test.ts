import { expect, test } from 'vitest';
import { RuleTableError, rulesCurrent } from '../../../db/rules/index.ts';
import { rulesInUse } from '../../../db/rules/in-use.ts';
import { shippedItems, shippedSetup } from '../../../db/rules/screen/items-schema.ts';
import type { ClinicRules } from '../../../db/types/rules.ts';
import { setUp } from '../../../renderer/logic/setup/set-up.ts';
import { noClinicRules } from '../../../renderer/logic/program/clinic/own-rules.ts';
import { thresholdGroups } from '../../../renderer/logic/program/clinic/threshold-groups.ts';
import { toldEnglish } from '../../../renderer/logic/texts/screens/told-english.ts';
import { englishTelling } from '../../../renderer/logic/texts/screens/telling.ts';

const clinic = (thresholds: Record<string, number>): ClinicRules => ({
  ...noClinicRules(rulesCurrent()),
  revision: 1,
  thresholds,
});

test('each number of set-up, screen and red flags is a row with a source, and lies within its range', () => {
  const codes = rulesCurrent().thresholds.map((each) => each.code);
  expect(new Set(codes).size).toBe(codes.length);
  expect(codes).toEqual(
    expect.arrayContaining([
      'setup-seat-below-knee-max',
      'setup-table-support-min',
      'opens-wrist-tone',
      'opens-field-baseline-angle-above',
      'rating-fatigue-1',
      'start-resistance-touch',
      'flag-pain-high-pain-rating',
    ]),
  );
});

test('as shipped, the tables of the screen are unchanged and no gap is left in a sentence', () => {
  const rules = rulesInUse(null);
  expect(rules.setup).toEqual(shippedSetup);
  expect(rules.intake).toEqual(shippedItems);
  expect(JSON.stringify([rules.intake, rules.redFlagTable, rules.redFlags, rules.flagsFromAnswers])).not.toMatch(
    /\{(\d|rating|rise)\}/,
  );
  const pain = rules.intake.items.find((item) => item.code === 'pain');
  expect(pain?.anchors).toMatchObject({ 2: expect.stringContaining('1 or 2'), 0: 'Pain of 5 or more.' });
});

test('a clinic changes a constant of the set-up, and it counts, says so and can be restored', () => {
  const own = rulesInUse(clinic({ 'setup-table-writing-max': 70 }));
  expect(own.version).toMatch(/\+clinic\.1$/);
  expect(own.setup.tableAboveElbow.writing).toMatchObject({ max: 70, source: 'clinic' });
  const row = own.thresholds.find((each) => each.code === 'setup-table-writing-max');
  expect(row).toMatchObject({ value: 70, shipped: 50, source: 'clinic' });
  const tape = {
    popliteal: 400,
    elbow: 240,
    shoe: 25,
    table: 740,
    tableAdjustable: false,
    tableThickness: 25,
    thigh: 160,
    slantRise: null,
    slantLength: null,
    hand: 'right' as const,
    purpose: 'writing' as const,
  };
  const footrest = (table: typeof shippedSetup): number => {
    const outcome = setUp(tape, table, toldEnglish.seat, englishTelling.decimals);
    return outcome.ok ? outcome.result.footrest : -1;
  };
  expect([footrest(shippedSetup), footrest(own.setup)]).toEqual([25, 0]); // 5 mm are less than a tape can tell
  expect(rulesInUse(clinic({})).setup).toEqual(shippedSetup);
});

test('what protects a client is made stricter only', () => {
  const own = rulesInUse(clinic({ 'flag-pain-high-pain-rating': 4, 'rating-pain-1': 3 }));
  const row = own.flagsFromAnswers.find((each) => each.flag === 'pain-high');
  expect(row).toMatchObject({ ratingAtLeast: 4, because: expect.stringContaining('rated 4 or more') });
  expect(own.redFlags.find((flag) => flag.code === 'pain-high')?.question).toContain('Pain of 4 or more');
  expect(own.intake.items.find((item) => item.code === 'pain')?.anchors).toMatchObject({
    1: expect.stringContaining('Pain of 3'),
    0: 'Pain of 4 or more.',
  });
  const mild: Record<string, number>[] = [
    { 'flag-pain-high-pain-rating': 6 },
    { 'rating-pain-1': 5 },
    { 'start-resistance-touch': 1 },
    { 'flag-tone-fixed-tone-score': -1 },
  ];
  for (const milder of mild) {
    expect(() => rulesInUse(clinic(milder)), JSON.stringify(milder)).toThrow(RuleTableError);
  }
});

test('numbers that contradict each other are refused with a sentence', () => {
  expect(() => rulesInUse(clinic({ 'setup-slant-min': 20 }))).toThrow(/must stay below/);
  expect(() => rulesInUse(clinic({ 'rating-fatigue-2': 4 }))).toThrow(/must stay below/);
  expect(() => rulesInUse(clinic({ 'opens-wrist-tone': 1.5 }))).toThrow(/whole number/);
});

test('all that can be changed is found by its words, in the order of the work', () => {
  const { thresholds } = rulesCurrent();
  const groups = thresholdGroups(thresholds, '', toldEnglish.ruleWords.groups);
  expect(groups.map((group) => group.title)).toContain('Seat and table');
  expect(groups.flatMap((group) => group.rows).length).toBe(thresholds.filter((each) => each.min < each.max).length);
  expect(
    thresholdGroups(thresholds, 'table above elbow for writing', toldEnglish.ruleWords.groups).flatMap((group) =>
      group.rows.map((row) => row.code),
    ),
  ).toEqual(['setup-table-writing-min', 'setup-table-writing-max']);
});
