import { expect, test } from 'vitest';
import type { Program } from '../../../db/types/program.ts';
import { repeatPairs } from '../../../renderer/logic/record/repeat-pairs.ts';
import { limits } from '../../limits.ts';
import { conditions, reading, record, sample } from '../progress/facts.ts';

const baseline = (id: string, day: string, over = {}) => sample(id, day, { baseline: true, ...over });
const facts = (samples: ReturnType<typeof sample>[], over = {}) =>
  record({ samples, readings: samples.map((s, i) => reading(s.id, 10 + i)), ...over });

test('two baselines within two weeks are a pair; each sample belongs to one', () => {
  const three = facts([baseline('a', '2026-01-05'), baseline('b', '2026-01-12'), baseline('c', '2026-01-14')]);
  expect(repeatPairs(three, limits)).toEqual([
    { task: 'copy', kind: 'unfamiliar', first: { right: 10, words: 20 }, second: { right: 11, words: 20 } },
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
