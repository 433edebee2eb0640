/** Odd clients get sentences and finite numbers, never NaN: the list at the end of the order for the model. */
import { describe, expect, test } from 'vitest';
import { examineChange, type ReadSample } from '../../renderer/change/index.ts';
import { verdictValue } from '../../renderer/logic/exchange/verdict-value.ts';
import { changeHeadline, changeSentences } from '../../renderer/logic/texts/change/change-words.ts';
import { limits as all } from '../limits.ts';

const limits = all.change;
const day = (i: number): string => new Date(Date.UTC(2025, 0, 6 + i)).toISOString().slice(0, 10);
const sample = (i: number, more: Partial<ReadSample> = {}): ReadSample => ({
  day: day(i),
  words: 24,
  right: 10 + (i % 7),
  reader: 'A',
  task: 'copy',
  ...more,
});
const many = (n: number, more: (i: number) => Partial<ReadSample> = () => ({})): ReadSample[] =>
  Array.from({ length: n }, (_, i) => sample(i, more(i)));

const odd: [name: string, samples: ReadSample[], expected: string][] = [
  ['200 samples on 200 days', many(200, (i) => ({ baseline: i < 3 })), 'cannot-tell'],
  ['200 samples of one day', many(200, () => ({ day: day(0), baseline: true })), 'cannot-tell'],
  [
    'all of one day, under two conditions',
    many(6, (i) => ({ day: day(0), cue: i % 2 ? 'visual' : 'none' })),
    'cannot-tell',
  ],
  ['none is a baseline', many(6), 'cannot-tell'],
  ['all are baselines', many(6, () => ({ baseline: true })), 'cannot-tell'],
  ['the therapist alone reads', many(5, (i) => ({ kind: 'therapist', reader: 'KT', baseline: i < 2 })), 'cannot-tell'],
  [
    'the therapist reads some as a stranger',
    many(8, (i) => ({ reader: 'KT', kind: i % 2 ? 'therapist' : 'unfamiliar', baseline: i < 3 })),
    'cannot-tell',
  ],
  [
    'every sample under conditions of its own',
    many(4, (i) => ({ surface: `screen ${i}`, baseline: i < 2 })),
    'not-comparable',
  ],
  ['one word each', many(6, (i) => ({ words: 1, right: i % 2, baseline: i < 3 })), 'cannot-tell'],
  ['every word right', many(6, (i) => ({ right: 24, baseline: i < 3 })), 'steady'],
  ['no word right', many(6, (i) => ({ right: 0, baseline: i < 3 })), 'steady'],
  ['a very long text', many(6, (i) => ({ words: 5000, right: 2400 + i, baseline: i < 3 })), 'steady'],
  ['two lines read at two sizes', many(6, (i) => ({ view: i < 3 ? null : '200', baseline: i < 3 })), 'not-comparable'],
  ['no sample', [], 'nothing'],
];

/** Every number anywhere in an answer. */
function numbersIn(value: unknown): number[] {
  if (typeof value === 'number') return [value];
  if (value && typeof value === 'object') return Object.values(value).flatMap(numbersIn);
  return [];
}

describe.each(odd)('%s', (_name, samples, expected) => {
  const found = examineChange({ samples }, limits);

  test(`is ${expected}, in finite numbers`, () => {
    expect(found.answer.verdict).toBe(expected);
    expect(numbersIn(found.answer).every(Number.isFinite)).toBe(true);
  });

  test.each(['en', 'es', 'de'] as const)('gets sentences (%s)', (language) => {
    const sentences = [changeHeadline(found, language), ...changeSentences(found, limits, { language })];
    expect(sentences.length).toBeGreaterThan(1);
    for (const sentence of sentences) {
      expect(sentence).not.toMatch(/NaN|undefined|null|Infinity|\[object/);
      expect(sentence).toMatch(/\S/);
    }
  });

  test('is exported in words, with numbers only where something is compared', () => {
    const value = verdictValue(found, limits);
    if (expected === 'nothing') return expect(value).toBeNull();
    expect(value!.words).not.toMatch(/NaN|undefined|null/);
    expect(value!.value === null).toBe(found.answer.compared === 0);
    expect(numbersIn(value).every(Number.isFinite)).toBe(true);
    if (expected === 'not-comparable') expect(value!.words).toMatch(/^Not comparable\./);
  });
});
