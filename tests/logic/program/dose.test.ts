import fc from 'fast-check';
import { expect, test } from 'vitest';
import { boutLines, mayResume, restMinutes, stopForToday } from '../../../renderer/logic/program/draft/dose.ts';

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

test('rest is one to two bout times and never under two minutes', () => {
  expect(restMinutes(0.5)).toEqual({ min: 2, max: 2 });
  expect(restMinutes(3)).toEqual({ min: 3, max: 6 });
});

test('writing goes on when fatigue is back within one point', () => {
  expect(mayResume(3, 4)).toBe(true);
  expect(mayResume(3, 5)).toBe(false);
});

const calm = { fatigueRise: 0, painRise: 0, toneRises: false };
const bout = (...right: number[]) => ({ lines: right.map((each) => ({ right: each, of: 8 })), sizesMm: [] });

test('one word fewer is noise, two lines running two words worse end the day', () => {
  expect(stopForToday([bout(8, 7, 7, 7)], calm)).toBeNull();
  expect(stopForToday([bout(8, 6, 8, 6)], calm)).toBeNull();
  expect(stopForToday([bout(8, 7, 6, 6)], calm)).toMatch(/two words worse/);
});

test('smaller letters, pain, fatigue, tone and three bouts end the day', () => {
  expect(stopForToday([{ lines: [], sizesMm: [3, 2.8, 2.7] }], calm)).toMatch(/smaller/);
  expect(stopForToday([], { ...calm, painRise: 2 })).toMatch(/Pain/);
  expect(stopForToday([], { ...calm, fatigueRise: 3 })).toMatch(/Fatigue/);
  expect(stopForToday([], { ...calm, toneRises: true })).toMatch(/Tone/);
  expect(stopForToday([bout(8), bout(8), bout(8)], calm)).toMatch(/3 bouts/);
});
