import { expect, test } from 'vitest';
import { describeChange, type ChangePoint } from '../../../renderer/logic/progress/change.ts';
import { headline } from '../../../renderer/logic/progress/headline.ts';
import type { Series } from '../../../renderer/logic/progress/series.ts';
import { limits } from '../../limits.ts';

const days = ['2026-01-05', '2026-01-12', '2026-01-19', '2026-01-26', '2026-02-02', '2026-02-09'];
const points = (rights: number[], words = 24): ChangePoint[] =>
  rights.map((right, i) => ({
    day: days[i]!,
    right,
    words,
    readers: 1,
    agree: null,
    baseline: i < 3,
    circumstances: null,
  }));
const tired = (values: number[]): Series[] => [
  {
    id: 'fatigue-after',
    label: 'Fatigue after writing, visit',
    unit: '0 to 10',
    shape: 'rect',
    points: values.map((value, i) => ({ at: i, day: days[i]!, value, low: null, high: null, words: '' })),
  },
];
const say = (rights: number[], fatigue: number[] = [], words = 24) => {
  const changePoints = points(rights, words);
  const picture = { changePoints, fatigue: fatigue.length > 0 ? tired(fatigue) : [] };
  return headline(picture, describeChange(changePoints, null, limits));
};

test('first and last day, with the words behind the percent, and fatigue beside them', () => {
  expect(say([11, 12, 11, 16, 18, 19], [6, 6, 5, 4, 3, 3])).toMatchObject({
    words: { first: '46 %', last: '79 %', detail: '11 of 24 words, now 19 of 24' },
    fatigue: { first: '6', last: '3' },
    verdict: 'Yes, up',
  });
});

test('without a spread to compare with it never says yes', () => {
  for (const rights of [[8, 12], [12, 8], [12], [24, 24, 24], [0, 0]]) {
    expect(say(rights).verdict, rights.join()).toBe('Cannot tell yet');
  }
});

test('one day has no second figure, no day has none, nothing countable makes no number', () => {
  expect(say([12], [5])).toMatchObject({ words: { first: '50 %', last: null }, fatigue: { first: '5', last: null } });
  expect(say([])).toEqual({ words: null, fatigue: null, verdict: 'Nothing read yet' });
  const zero = say([0], [], 0);
  expect(zero.words).toBeNull();
  expect(JSON.stringify(zero)).not.toMatch(/NaN|null %|Infinity/);
});

test('a provisional figure smaller than counting allows does not decide alone', () => {
  const changePoints = points([13, 15].map((right) => right)).map((p) => ({ ...p, baseline: p.day === days[0] }));
  const mdc = { sem: 1.5, mdc95: 4, mdc90: 3.5, pairs: 2, provisional: true };
  const change = describeChange(changePoints, mdc as never, limits);
  expect(change.verdict).toBe('cannot-tell');
  const far = describeChange(
    [...points([5]), ...points([0, 20]).slice(1)].map((p, i) => ({ ...p, baseline: i === 0 })),
    mdc as never,
    limits,
  );
  expect(far.verdict).toBe('up');
  expect(headline({ changePoints: [], fatigue: [] }, far).verdict).toBe('Probably, up');
  const settled = describeChange(changePoints, { ...mdc, pairs: 5, provisional: false } as never, limits);
  expect(settled.verdict).toBe('up');
});

test('the percent of two readers is the one in the chart, not that of the rounded words', () => {
  const changePoints = points([18, 29], 33).map((p, i) => ({ ...p, exactRight: [17.5, 28.5][i]!, readers: 2 }));
  const { words } = headline({ changePoints, fatigue: [] }, describeChange(changePoints, null, limits));
  expect(words).toMatchObject({ first: '53 %', last: '86 %', detail: '17.5 of 33 words, now 28.5 of 33' });
});
