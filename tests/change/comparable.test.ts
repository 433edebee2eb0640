/** Comparable or not: rules of the model that no worked case holds. */
import { expect, test } from 'vitest';
import { examineChange } from '../../renderer/change/index.ts';
import { ask, dayAfter, limits, weekly } from './support.ts';

test('another surface, or another enlargement of the reading, is not comparable', () => {
  const paper = weekly([10, 9, 11], 3);
  const glass = weekly([18, 19], 0, { start: 21, surface: 'glass tablet-1' });
  expect(ask([...paper, ...glass])).toMatchObject({ verdict: 'not-comparable', differs: ['surface'], change: null });
  const larger = weekly([18, 19], 0, { start: 21, view: '150' });
  expect(ask([...paper, ...larger])).toMatchObject({ verdict: 'not-comparable', differs: ['view'], leftOut: 5 });
});

test('samples without a surface and a view are paper at true size', () => {
  const noted = weekly([10, 9, 11], 3, { surface: 'paper', view: 'true-size' });
  expect(ask([...noted, ...weekly([18, 19], 0, { start: 21 })])).toMatchObject({ differs: [], compared: 5 });
});

test('what was left out is named by its conditions', () => {
  const all = [
    ...weekly([10, 9, 11, 17, 18], 3),
    ...weekly([6], 0, { start: 36, task: 'free' }),
    ...weekly([19], 0, { start: 49 }),
  ];
  const { answer, leftOut } = examineChange({ samples: all }, limits);
  expect(answer).toMatchObject({ notes: ['comparable-part'], differs: ['task'], compared: 6, leftOut: 1 });
  expect(leftOut.map((visits) => visits.map(({ day, conditions }) => [day, conditions.task]))).toEqual([
    [[dayAfter(36), 'own']],
  ]);
});

test('other kinds of readers are dropped before the break is looked for, and neither counts as left out', () => {
  const family = weekly([20, 20], 0, { start: 100, kind: 'family' });
  const answer = ask([...weekly([10, 11], 2), ...weekly([12], 0, { start: 250 }), ...family]);
  expect(answer).toMatchObject({ notes: ['break', 'one-visit'], sinceDay: dayAfter(250), leftOut: 0, moreSamples: 2 });
});

test('where all visits are marked, the first one serves as the baseline', () => {
  expect(ask(weekly([12, 13, 12], 3))).toMatchObject({ verdict: 'cannot-tell', compared: 3 });
});

test('one set of conditions over several days without a now asks for two more, without a note', () => {
  const endsMarked = weekly([12, 13, 12], 0).map((sample, i) => ({ ...sample, baseline: i > 0 }));
  expect(ask(endsMarked)).toMatchObject({ verdict: 'cannot-tell', compared: 0, leftOut: 0, notes: [], moreSamples: 2 });
});

test('where a baseline is marked, only conditions with marked visits count', () => {
  const free = weekly([12], 1, { task: 'free' });
  expect(ask([...free, ...weekly([12, 12], 0, { start: 7 })])).toMatchObject({
    verdict: 'not-comparable',
    compared: 0,
  });
});

test('only readers of an unknown kind, or tasks that nobody scores, leave nothing', () => {
  expect(ask(weekly([12, 13], 1, { kind: 'neighbor' })).verdict).toBe('nothing');
  expect(ask(weekly([12, 13], 1, { task: 'row' })).verdict).toBe('nothing');
});

test('a therapist who reads alone is compared; beside a stranger only the stranger counts', () => {
  const alone = weekly([6, 7, 20, 21], 2, { kind: 'therapist' });
  expect(ask(alone)).toMatchObject({ verdict: 'up', compared: 4 });
  expect(ask([...alone, ...weekly([12, 12, 12], 2)])).toMatchObject({ compared: 3 });
});

test('200 samples, long texts and no baseline give numbers', () => {
  const many = weekly(
    Array.from({ length: 200 }, (_, i) => 300 + ((i * 37) % 90)),
    0,
    { words: 700 },
  );
  const answer = ask(many);
  expect(answer.compared).toBe(200);
  for (const value of [answer.probability, answer.before, answer.now, answer.visitSd, answer.change?.low]) {
    expect(Number.isFinite(value)).toBe(true);
  }
  const oneDay = weekly([10, 11, 12], 0).map((sample) => ({ ...sample, day: dayAfter(0) }));
  expect(ask(oneDay)).toMatchObject({ verdict: 'cannot-tell', notes: ['one-visit'], moreSamples: 2 });
});

test('a spread that suits only one phase leaves numbers', () => {
  const wild = Array.from({ length: 60 }, (_, i) => (i % 2 ? 590 : 10));
  const still = Array.from({ length: 60 }, () => 300);
  expect(ask(weekly([...wild, ...still], 60, { words: 600 })).probability).toBeGreaterThan(0.4);
});

test('an explanation holds back the flag only', () => {
  const samples = weekly([21, 20, 22, 9, 8], 3);
  expect(examineChange({ samples }, limits).answer.loss).toBe('flag');
  expect(examineChange({ samples, explained: true }, limits).answer.loss).toBe('ask-repeat');
});
