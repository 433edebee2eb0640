import { Dose } from '../../../db/types/program.ts';
import { amountWords } from '../../../renderer/logic/texts/dose-words.ts';
import { texts } from '../../../renderer/logic/texts/en.ts';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { boutLines } from '../../../renderer/logic/program/draft/dose.ts';

test('a bout is four fifths of the lines before the fall, at least one, at most ten', () => {
  expect(boutLines(5, 6)).toBe(3);
  expect(boutLines(3, 6)).toBe(1);
  expect(boutLines(null, 6)).toBe(6);
  expect(boutLines(null, 24)).toBe(10);
  fc.assert(
    fc.property(fc.option(fc.integer({ min: 3, max: 60 })), fc.integer({ min: 1, max: 60 }), (onset, tested) => {
      const lines = boutLines(onset, tested);
      expect(lines).toBeGreaterThanOrEqual(1);
      expect(lines).toBeLessThanOrEqual(10);
      if (onset !== null) expect(lines).toBeLessThan(onset);
    }),
  );
});

test('reads a dose stored before rest was a range and before null said that a number does not apply', () => {
  const stored = { minutes: 0, sets: null, reps: null, lines: 4, restMinutes: 2, timesPerDay: 0, daysPerWeek: 7 };
  expect(Dose.parse(stored)).toMatchObject({
    minutes: null,
    lines: 4,
    restMinutes: { least: 2, most: 2 },
    timesPerDay: null,
    daysPerWeek: 7,
  });
  const range = { ...stored, restMinutes: { least: 5, most: null } };
  expect(Dose.parse(Dose.parse(range)).restMinutes).toEqual({ least: 5, most: null });
  expect(Dose.safeParse({ ...range, restMinutes: { least: 5, most: 2 } }).success).toBe(false);
});

test('words a rest as one number, as a range, or as the least', () => {
  const bouts = (restMinutes: Dose['restMinutes']): Dose =>
    Dose.parse({
      ...{ minutes: 20, sets: 4, reps: null, lines: null },
      restMinutes,
      timesPerDay: 1,
      daysPerWeek: 5,
      form: 'bouts',
    });
  const said = (rest: Dose['restMinutes']): string => amountWords(bouts(rest), texts.dose);
  expect(said({ least: 5, most: 5 })).toBe('4 turns of 5 minutes, rest 5 minutes after each');
  expect(said({ least: 2, most: 4 })).toBe('4 turns of 5 minutes, rest 2 to 4 minutes after each');
  expect(said({ least: 5, most: null })).toBe('4 turns of 5 minutes, rest at least 5 minutes after each');
  expect(said(null)).toBe('4 turns of 5 minutes');
});
