import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { shippedItems, shippedRedFlags, shippedSetup } from '../../../db/rules/screen/items-schema.ts';
import type { IntakeAnswer } from '../../../db/types/intake.ts';
import { findings, gradeFromRatings, mayStart } from '../../../renderer/logic/intake/findings.ts';
import { openFlags } from '../../../renderer/logic/intake/flags.ts';
import { setUp } from '../../../renderer/logic/setup/set-up.ts';
import { answer, flagAnswer, noToAll } from './facts.ts';
import { toldEnglish } from '../../../renderer/logic/texts/screens/told-english.ts';
import { englishTelling } from '../../../renderer/logic/texts/screens/telling.ts';

const codes = shippedItems.items.map((item) => item.code);
const item = (code: string) => shippedItems.items.find((each) => each.code === code)!;
const start = (answers: IntakeAnswer[], redFlags = noToAll()) =>
  Object.fromEntries(
    mayStart(
      findings(answers, shippedItems, null, toldEnglish.findings),
      openFlags({ redFlags, intakeAnswers: answers }, shippedRedFlags, toldEnglish.flags),
      shippedItems,
      toldEnglish.findings,
    ).map((area) => [area.area, area]),
  );

describe('findings', () => {
  test('worst first, each with its answer and a plain sentence', () => {
    const list = findings(
      [answer('touch', 3), answer('grasp', 1, { side: 'right' }), answer('tremor', 2, { detail: 'rest' })],
      shippedItems,
      null,
      toldEnglish.findings,
    );
    expect(list.slice(0, 2).map((finding) => [finding.code, finding.severity])).toEqual([
      ['grasp', 'before'],
      ['tremor', 'alongside'],
    ]);
    expect(list[0]?.source).toBe('intakeAnswer/answer grasp right');
    expect(list[0]?.sentence).toContain('Pen grasp, right: 1 of 3.');
    expect(list[1]?.sentence).toContain('At rest.');
  });

  test('what nobody asked of the short eight is listed as unknown', () => {
    expect(findings([], shippedItems, null, toldEnglish.findings)).toHaveLength(8);
    expect(
      findings([], shippedItems, null, toldEnglish.findings).every(
        (finding) => finding.severity === 'unknown' && finding.grade === null,
      ),
    ).toBe(true);
  });

  test('not indicated and not tested are told apart, neither has a grade', () => {
    const list = findings(
      [answer('tone', null, { state: 'not-indicated' }), answer('skin', null, { reason: 'bandage' })],
      shippedItems,
      null,
      toldEnglish.findings,
    );
    expect(list.find((finding) => finding.code === 'tone')).toMatchObject({ grade: null, severity: 'not-indicated' });
    expect(list.find((finding) => finding.code === 'skin')?.sentence).toContain('not tested (bandage)');
  });

  test('the latest answer of a side counts', () => {
    const list = findings(
      [answer('grasp', 1, { at: '2026-03-04T09:00:00Z' }), answer('grasp', 3, { at: '2026-03-18T09:00:00Z' })],
      shippedItems,
      null,
      toldEnglish.findings,
    );
    expect(list.filter((finding) => finding.code === 'grasp').map((finding) => finding.grade)).toEqual([3]);
  });

  test('a table that is too high becomes findings of the set-up', () => {
    const outcome = setUp(
      {
        popliteal: 388,
        elbow: 232,
        shoe: 25,
        table: 760,
        tableAdjustable: false,
        tableThickness: 25,
        thigh: 168,
        slantRise: null,
        slantLength: null,
        hand: 'right',
        purpose: 'writing',
      },
      shippedSetup,
      toldEnglish.seat,
      englishTelling.decimals,
    );
    if (!outcome.ok) throw new Error(outcome.sentence);
    const list = findings([], shippedItems, { result: outcome.result, factId: 'x' }, toldEnglish.findings);
    expect(list.filter((finding) => finding.source === 'setup/x').map((finding) => finding.code)).toEqual([
      'table-too-high',
      'feet-unsupported',
    ]);
  });
});

test('ratings earn the grades that the anchors describe', () => {
  const grades = (code: string, pairs: [number | null, number | null][]) =>
    pairs.map(([b, a]) => gradeFromRatings(item(code), b, a));
  expect(
    grades('pain', [
      [0, 0],
      [2, 1],
      [1, 4],
      [5, 0],
      [null, 3],
      [null, null],
    ]),
  ).toEqual([3, 2, 1, 0, 1, null]);
  expect(
    grades('neck', [
      [4, 4],
      [1, 3],
      [1, 5],
      [1, 6],
      [null, 3],
    ]),
  ).toEqual([3, 2, 1, 0, null]);
  expect(
    grades('fatigue', [
      [3, 4],
      [3, 5],
      [3, 6],
      [3, 7],
      [5, 2],
    ]),
  ).toEqual([3, 2, 1, 0, 3]);
  expect(gradeFromRatings(item('grasp'), 1, 2)).toBeNull();
});

describe('what may start now', () => {
  const allFine = codes.map((code) => answer(code, 3));

  test('everything when all was tested and fine', () => {
    expect(Object.values(start(allFine)).every((area) => area.may)).toBe(true);
  });

  test('untested or not indicated is never safe, whatever else is fine', () => {
    const needed = new Set(shippedItems.mayStart.flatMap((area) => area.needs.map((need) => need.item)));
    fc.assert(
      fc.property(
        fc.constantFrom(...needed),
        fc.constantFrom('not-tested' as const, 'not-indicated' as const, 'gone' as const),
        (code, how) => {
          const answers = allFine.flatMap((fact) =>
            fact.item !== code ? [fact] : how === 'gone' ? [] : [{ ...fact, state: how, grade: null }],
          );
          const areas = start(answers);
          for (const area of shippedItems.mayStart) {
            if (area.needs.some((need) => need.item === code)) expect(areas[area.area]?.may).toBe(false);
          }
        },
      ),
    );
  });

  test('a same-day flag leaves only the set-up, an emergency nothing', () => {
    const sameDay = start(allFine, [...noToAll(), flagAnswer('injury', true, '2026-03-04T10:00:00Z')]);
    expect(
      Object.values(sameDay)
        .filter((area) => area.may)
        .map((area) => area.area),
    ).toEqual(['set-up']);
    const emergency = start(allFine, [...noToAll(), flagAnswer('collapse', true, '2026-03-04T10:00:00Z')]);
    expect(Object.values(emergency).some((area) => area.may)).toBe(false);
  });

  test('a refusal names the item', () => {
    const areas = start(allFine.map((fact) => (fact.item === 'tone' ? { ...fact, grade: 2 as const } : fact)));
    expect(areas.resistance).toMatchObject({ may: false, because: '“Tone in wrist, fingers, elbow” is 2 of 3.' });
  });
});
