import fc from 'fast-check';
import { expect, test } from 'vitest';
import { rulesInUse } from '../../../db/rules/in-use.ts';
import type { ClientRecord } from '../../../db/types/record.ts';
import { draftProgram, programInput } from '../../../renderer/logic/program/facts/from-record.ts';
import { recordAsOf } from '../../../renderer/logic/record/record-as-of.ts';
import { clientId, id, record, visitIds } from '../pages/record.ts';

const rules = rulesInUse(null);
const items = rules.intake.items.map(({ code }) => code);
const [, second, third] = visitIds;
const later = { clientId, visitId: third, at: '2026-04-15T11:00:00.000Z', by: 'JM' };

/** The client at the second visit: nothing of the third. */
const before = (): ClientRecord =>
  record((r) => {
    r.programs = [{ ...r.programs[0]!, id: id(), visitId: visitIds[0] }];
    r.samples = r.samples.filter(({ visitId }) => visitId !== third);
    r.readings = r.readings.filter(({ visitId }) => visitId !== third);
    r.practiceLogs = [];
  });

type Change = (r: ClientRecord) => void;
const grade = fc.constantFrom(0 as const, 1 as const, 2 as const, 3 as const);

/** One fact of the third visit, of any kind that a draft reads. */
const laterFact: fc.Arbitrary<Change> = fc.oneof(
  fc.tuple(fc.constantFrom(...items), grade).map(([item, g]): Change => (r) => {
    const side = rules.intake.items.find(({ code }) => code === item)?.asksSide ? 'right' : 'none';
    const rest = { reason: '', detail: null, before: null, after: null, note: '' };
    r.intakeAnswers.push({ ...later, id: id(), item, side, state: 'graded', grade: g, ...rest });
  }),
  fc
    .tuple(fc.constantFrom(...rules.redFlags.map(({ code }) => code)), fc.boolean())
    .map(([flag, present]): Change => (r) => {
      r.redFlags.push({ ...later, id: id(), flag, present, review: null, note: '' });
    }),
  fc.integer({ min: 600, max: 900 }).map((table): Change => (r) => {
    r.setups.push({ ...r.setups[0]!, ...later, id: id(), table });
  }),
  fc.integer({ min: 0, max: 24 }).map((right): Change => (r) => {
    const sample = {
      ...r.samples[0]!,
      ...later,
      id: id(),
      takenAt: '2026-04-15T10:30:00.000Z',
      seconds: 600,
      fatigueAfter: 9,
    };
    r.samples.push(sample);
    r.readings.push({ ...r.readings[0]!, ...later, id: id(), sampleId: sample.id, counted: { right, of: 24 } });
  }),
  fc.constantFrom(1 as const, 4 as const).map((tier): Change => (r) => {
    r.programs.push({ ...r.programs[0]!, ...later, id: id(), tier });
  }),
);

test('no later fact changes a draft, nor what it is made from', () => {
  fc.assert(
    fc.property(fc.array(laterFact, { minLength: 1, maxLength: 6 }), (changes) => {
      const known = before();
      const all = before();
      // The same ids in both: ids are counted.
      all.programs[0]!.id = known.programs[0]!.id;
      all.intakeAnswers = known.intakeAnswers.slice();
      changes.forEach((change) => change(all));
      expect(programInput(all, rules, second)).toEqual(programInput(known, rules, second));
      const draftId = id();
      expect(draftProgram(all, second, rules, () => draftId)).toEqual(
        draftProgram(known, second, rules, () => draftId),
      );
    }),
    { numRuns: 150, seed: 11 },
  );
});

test('at the last visit nothing is left out; of two visits of one day the earlier does not see the later', () => {
  const whole = record();
  expect(recordAsOf(whole, third)).toEqual(whole);
  whole.visits.push({ ...whole.visits[2]!, id: id(0xa4) });
  whole.setups.push({ ...whole.setups[0]!, id: id(), visitId: id(0xa4) });
  expect(recordAsOf(whole, third).setups).toHaveLength(1);
  expect(recordAsOf(whole, id(0xa4)).setups).toHaveLength(2);
});

test('facts without a visit are cut by their day: practice by its date, goals by when they were set', () => {
  const whole = record();
  const cut = recordAsOf(whole, second);
  expect(cut.practiceLogs).toEqual([]);
  expect(cut.goals).toHaveLength(1);
  expect(recordAsOf(whole, 'unknown')).toBe(whole);
});
