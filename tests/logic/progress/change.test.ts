import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { describeChange, type ChangePoint } from '../../../renderer/logic/progress/change.ts';
import { minimalChange } from '../../../renderer/logic/progress/minimal-change.ts';
import { limits } from '../../limits.ts';

const point = (day: string, right: number, over: Partial<ChangePoint> = {}): ChangePoint => ({
  day,
  right,
  words: 60,
  readers: 2,
  agree: true,
  baseline: false,
  circumstances: null,
  ...over,
});
const base = { baseline: true };

test('six visits after a steady baseline: the sentence a therapist can defend', () => {
  const answer = describeChange(
    [
      point('2026-01-05', 30, base),
      point('2026-01-07', 32, base),
      point('2026-01-09', 31, base),
      point('2026-01-16', 35),
      point('2026-01-23', 40),
      point('2026-01-30', 44),
    ],
    null,
    limits,
  );
  expect(answer.verdict).toBe('up');
  expect(answer.sentence).toBe(
    'Six visits: up by about 4 words in 60 a week; larger than the day-to-day spread of the baseline; two readers agree.',
  );
  expect(answer.evidence!.band!.n).toBe(3);
});

test('nothing read yet', () => {
  expect(describeChange([], null, limits)).toMatchObject({ verdict: 'nothing', evidence: null });
});

test('one visit never shows change and says how many more make a baseline', () => {
  const answer = describeChange([point('2026-01-05', 40)], null, limits);
  expect(answer).toMatchObject({ verdict: 'cannot-tell', moreSamples: 2 });
  expect(answer.sentence).toContain('40 of 60 words');
});

test('two visits without a baseline cannot tell yet, and say what would', () => {
  const answer = describeChange([point('2026-01-05', 30), point('2026-01-12', 44)], null, limits);
  expect(answer.verdict).toBe('cannot-tell');
  expect(answer.sentence).toContain('Cannot tell yet');
  expect(answer.sentence).toContain('About three more samples');
  expect(answer.moreSamples).toBe(3);
});

test('two visits with a settled minimal detectable change can tell', () => {
  const mdc = minimalChange(
    [
      [50, 52],
      [61, 60],
      [40, 43],
      [70, 69],
      [55, 56],
    ],
    limits,
  )!;
  const answer = describeChange([point('2026-01-05', 30), point('2026-01-12', 44)], mdc, limits);
  expect(answer.verdict).toBe('up');
  expect(answer.sentence).toContain('more than two samples of an unchanged hand differ');
  expect(answer.sentence).not.toContain('provisional');
});

test('a figure from few pairs is called provisional', () => {
  const mdc = minimalChange(
    [
      [50, 52],
      [61, 60],
    ],
    limits,
  )!;
  expect(describeChange([point('2026-01-05', 30), point('2026-01-12', 44)], mdc, limits).sentence).toContain(
    'provisional from 2 repeat pairs',
  );
});

test('a wide baseline whose band passes 100 % cannot detect a rise', () => {
  const answer = describeChange(
    [
      point('2026-01-05', 30, base),
      point('2026-01-07', 55, base),
      point('2026-01-09', 40, base),
      point('2026-01-16', 58),
    ],
    null,
    limits,
  );
  expect(answer.verdict).toBe('cannot-tell');
  expect(answer.sentence).toContain('cannot detect');
});

describe('edges of the scale', () => {
  test('all words legible', () => {
    const answer = describeChange([point('2026-01-05', 60), point('2026-01-12', 60)], null, limits);
    expect(answer.sentence).toContain('Every word could be read at all two visits');
  });
  test('none legible', () => {
    const answer = describeChange([point('2026-01-05', 0), point('2026-01-12', 0)], null, limits);
    expect(answer.sentence).toContain('No word could be read');
  });
});

test('two samples of one day count as one visit', () => {
  const answer = describeChange(
    [point('2026-01-05', 20, { words: 30 }), point('2026-01-05', 22, { words: 30 })],
    null,
    limits,
  );
  expect(answer.sentence).toMatch(/^One visit: 42 of 60 words .* from two samples/);
});

test('after a break of a year the series starts anew', () => {
  const answer = describeChange(
    [point('2024-12-01', 20), point('2024-12-08', 22), point('2026-01-12', 44)],
    null,
    limits,
  );
  expect(answer.verdict).toBe('cannot-tell');
  expect(answer.sentence).toContain('break of 13 months');
  expect(answer.sentence).toContain('before the break 22 of 60');
});

test('an early rise that was lost again is no rise', () => {
  const answer = describeChange(
    [
      point('2026-01-05', 30, base),
      point('2026-01-07', 31, base),
      point('2026-01-09', 30, base),
      point('2026-01-16', 45),
      point('2026-01-23', 46),
      point('2026-01-30', 30),
      point('2026-02-06', 30),
    ],
    null,
    limits,
  );
  expect(['cannot-tell', 'steady']).toContain(answer.verdict);
});

test('a long flat series is steady', () => {
  const rights = [40, 41, 40, 39, 40, 41, 40, 40];
  const answer = describeChange(
    rights.map((right, i) => point(`2026-01-${String(i + 10)}`, right)),
    null,
    limits,
  );
  expect(answer.verdict).toBe('steady');
  expect(answer.sentence).toContain('no clear change');
});

test('a fall is said as plainly as a rise', () => {
  const answer = describeChange(
    [50, 45, 40, 35, 30, 26].map((right, i) => point(`2026-02-${10 + i * 3}`, right)),
    null,
    limits,
  );
  expect(answer.verdict).toBe('down');
  expect(answer.sentence).toContain('down by about');
});

test('other conditions are named beside the comparison', () => {
  const circumstances = (pen: string, time: string) => ({
    task: { kind: 'pangram' as const, textCodes: ['P1'], text: '', spellingNoted: false },
    conditions: {
      hand: 'right' as const,
      pen,
      paper: '',
      time,
      doseState: null,
      cue: null,
      minutesSinceDose: null,
      surfaceAngleDeg: null,
      seatMm: null,
      tableMm: null,
      armSupport: '',
      grip: '',
      glasses: null,
      instruction: null,
      style: null,
    },
  });
  const answer = describeChange(
    [
      point('2026-01-05', 30, { circumstances: circumstances('gel', '09:00') }),
      point('2026-01-12', 33, { circumstances: circumstances('pencil', '15:30') }),
    ],
    null,
    limits,
  );
  expect(answer.conditions).toBe('Not the same: pen (gel, then pencil), time of day (09:00, then 15:30).');
});

test('whatever the series: a sentence, no NaN, never the word that statistics likes', () => {
  const day = fc
    .integer({ min: 0, max: 900 })
    .map((n) => new Date(Date.UTC(2025, 0, 1 + n)).toISOString().slice(0, 10));
  const points = fc.array(
    fc.record({
      day,
      words: fc.integer({ min: 0, max: 80 }),
      share: fc.double({ min: 0, max: 1, noNaN: true }),
      baseline: fc.boolean(),
      readers: fc.integer({ min: 1, max: 3 }),
    }),
    { maxLength: 12 },
  );
  fc.assert(
    fc.property(points, (list) => {
      const answer = describeChange(
        list.map((p) => ({
          ...p,
          right: Math.round(p.words * p.share),
          agree: p.readers > 1 ? true : null,
          circumstances: null,
        })),
        null,
        limits,
      );
      expect(answer.sentence.length).toBeGreaterThan(20);
      expect(JSON.stringify(answer)).not.toMatch(/NaN|Infinity|undefined|significant/);
    }),
  );
});
