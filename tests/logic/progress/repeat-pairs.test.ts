import { expect, test } from 'vitest';
import type { Program } from '../../../db/types/program.ts';
import { occasionsOf } from '../../../renderer/logic/record/occasions.ts';
import { progressPicture } from '../../../renderer/logic/progress/series.ts';
import { mdcFor, repeatPairs, type RepeatPair } from '../../../renderer/logic/progress/repeat-pairs.ts';
import { limits } from '../../limits.ts';
import { conditions, reading, record, sample } from './facts.ts';

const baseline = (id: string, day: string, over = {}) => sample(id, day, { baseline: true, ...over });
const facts = (samples: ReturnType<typeof sample>[], over = {}) =>
  record({ samples, readings: samples.map((s, i) => reading(s.id, 10 + i)), ...over });

test('two baselines within two weeks are a pair; each sample belongs to one', () => {
  const three = facts([baseline('a', '2026-01-05'), baseline('b', '2026-01-12'), baseline('c', '2026-01-14')]);
  expect(repeatPairs(three, limits)).toEqual([
    { task: 'copy', reader: 'unfamiliar', first: 50, second: expect.closeTo(55) },
  ]);
});

test('a gap, another task, another hand, another dose state or a program in between is no repeat', () => {
  const other = (over: object) => facts([baseline('a', '2026-01-05'), baseline('b', '2026-01-12', over)]);
  const late = facts([baseline('a', '2026-01-05'), baseline('b', '2026-03-12')]);
  expect(repeatPairs(late, limits)).toEqual([]);
  expect(
    repeatPairs(other({ task: { kind: 'free', textCodes: [], text: 'a', spellingNoted: false } }), limits),
  ).toEqual([]);
  expect(repeatPairs(other({ conditions: { ...conditions, hand: 'left' } }), limits)).toEqual([]);
  expect(repeatPairs(other({ conditions: { ...conditions, doseState: 'off' } }), limits)).toEqual([]);
  const programs = [{ status: 'approved', approvedAt: '2026-01-06T10:00:00.000Z' }] as Program[];
  expect(repeatPairs({ ...other({}), programs }, limits)).toEqual([]);
});

test('the smallest detectable change rests on pairs of the same task and reader, and says when it is provisional', () => {
  const occasions = occasionsOf(facts([sample('a', '2026-01-05')]));
  const pair = (first: number, second: number, over: Partial<RepeatPair> = {}): RepeatPair => ({
    task: 'copy',
    reader: 'unfamiliar',
    first,
    second,
    ...over,
  });
  const alike = [pair(50, 54), pair(60, 58), pair(70, 75), pair(40, 41)];
  const apart = [pair(0, 100, { reader: 'family' }), pair(0, 100, { task: 'own' })];
  expect(mdcFor(occasions, apart, limits)).toBeNull();
  const four = mdcFor(occasions, [...alike, ...apart], limits)!;
  expect(four).toMatchObject({ pairs: 4, provisional: true });
  expect(mdcFor(occasions, [...alike, pair(80, 82)], limits)).toMatchObject({ pairs: 5, provisional: false });
  expect(mdcFor([], alike, limits)).toBeNull();
  // The page takes the clinic's pairs where it has them.
  expect(progressPicture(facts([sample('a', '2026-01-05')]), limits, { pairs: alike }).mdc?.sem).toBe(four.sem);
});
