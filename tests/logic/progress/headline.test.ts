import { expect, test } from 'vitest';
import { examineChange, type ReadSample } from '../../../renderer/change/index.ts';
import { headline } from '../../../renderer/logic/progress/headline.ts';
import type { Series } from '../../../renderer/logic/progress/series.ts';
import { englishTelling } from '../../../renderer/logic/texts/screens/telling.ts';
import { limits } from '../../limits.ts';

const days = ['2026-01-05', '2026-01-12', '2026-01-19', '2026-01-26', '2026-02-02', '2026-02-09'];
const samples = (rights: number[], words = 24, baseline = 3): ReadSample[] =>
  rights.map((right, i) => ({ day: days[i]!, right, words, task: 'copy', reader: 'a', baseline: i < baseline }));
const tired = (values: number[]): Series[] => [
  {
    id: 'fatigue-after',
    label: 'Fatigue after writing, visit',
    unit: '0 to 10',
    shape: 'rect',
    points: values.map((value, i) => ({ at: i, day: days[i]!, value, low: null, high: null, words: '' })),
  },
];
const say = (given: ReadSample[], fatigue: number[] = []) =>
  headline(
    { fatigue: fatigue.length > 0 ? tired(fatigue) : [] },
    examineChange({ samples: given }, limits.change),
    'en',
    englishTelling,
  );

test('levels before and now, with the words behind the percent, and fatigue beside them', () => {
  const { words, fatigue, verdict } = say(samples([6, 7, 6, 20, 21, 20]), [6, 6, 5, 4, 3, 3]);
  expect(words?.detail).toMatch(/^about [67] of 24 words, now (19|20)$/);
  expect(fatigue).toMatchObject({ first: '6', last: '3' });
  expect(verdict).toBe('Yes, up');
});

test('a likely change is probable, an unlikely one cannot be told', () => {
  expect(say(samples([10, 11, 10, 16, 17, 16])).verdict).toMatch(/^(Probably, up|Cannot tell yet)$/);
  for (const rights of [[8, 12], [12, 8], [12]]) {
    expect(say(samples(rights, 24, 1)).verdict, rights.join()).toBe('Cannot tell yet');
  }
});

test('what cannot be compared stands before any number of change', () => {
  const other = samples([10, 11, 10, 18, 19, 20]).map((sample, i) => ({ ...sample, dose: i < 3 ? 'off' : 'on' }));
  expect(say(other)).toMatchObject({ verdict: 'Not comparable', words: { last: null } });
});

test('one day has no second figure, no day has none, nothing countable makes no number', () => {
  expect(say(samples([12]), [5])).toMatchObject({
    words: { first: '50 %', last: null, detail: '12 of 24 words' },
    fatigue: { first: '5', last: null },
  });
  expect(say([])).toEqual({ words: null, fatigue: null, verdict: 'Nothing read yet' });
  const zero = say(samples([0], 0));
  expect(zero.words).toBeNull();
  expect(JSON.stringify(zero)).not.toMatch(/NaN|null %|Infinity/);
});
