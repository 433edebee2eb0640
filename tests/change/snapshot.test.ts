/**
 * What this version of the model answers, kept. When an answer changes: raise `CHANGE_VERSION` and add a file with
 * `CHANGE_SNAPSHOT=write npx vitest run --config build/vitest.config.ts tests/change/snapshot.test.ts`; old files stay.
 */
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { seededRandom } from '../../build/letters/random.ts';
import {
  CHANGE_VERSION,
  examineChange,
  fatigueOnset,
  lineTrend,
  slopeInterval,
  smallestChange,
  type ReadSample,
} from '../../renderer/change/index.ts';
import { dayAfter, limits } from './support.ts';

const file = new URL(`./snapshots/${CHANGE_VERSION}.json`, import.meta.url);

/** A client of every shape: breaks, readers, kinds, conditions noted or not. */
function client(seed: number): ReadSample[] {
  const random = seededRandom(seed);
  const some = <T>(...list: T[]): T => random.pick(list);
  const [doses, cues, readers] = [
    some(['on'], ['on', 'off'], ['on', null]),
    some(['none'], ['none', 'lines']),
    some(['A'], ['A', 'B']),
  ];
  const [level, gain, marked] = [random.between(0.1, 0.9), some(0, 0.45, -0.45), some(0, 1, 3)];
  let day = 0;
  return Array.from({ length: some(1, 3, 6, 9) }, (_, i) => {
    day += some(7, 7, 7, 14, 200);
    const p = Math.min(1, Math.max(0, level + (i < marked ? 0 : gain) + 0.1 * random.normal()));
    const words = some(24, 24, 60, 8);
    const right = Array.from({ length: words }, () => random.next()).filter((x) => x < p).length;
    const shared = { day: dayAfter(day), words, task: some('copy', 'copy', 'copy', 'free'), baseline: i < marked };
    const conditions = { dose: some(...doses), cue: some(...cues), hand: 'right' };
    return { ...shared, ...conditions, right, reader: some(...readers), kind: some('unfamiliar', 'family') };
  });
}

function answers(): Record<string, unknown> {
  const pairs = [
    { first: { right: 14, words: 24 }, second: { right: 17, words: 24 } },
    { first: { right: 20, words: 24 }, second: { right: 19, words: 24 } },
  ];
  const verdicts = Array.from({ length: 60 }, (_, i) => {
    const { answer } = examineChange({ samples: client(i + 1), pairs: i % 2 ? pairs : [] }, limits);
    return [`client ${i + 1}`, answer] as const;
  });
  const bout = [8, 8, 7, 4, 3, 4].map((right) => ({ right, words: 8 }));
  return {
    ...Object.fromEntries(verdicts),
    onset: fatigueOnset([bout, bout], limits),
    slopes: slopeInterval([-0.012, -0.004, -0.015, -0.009]),
    trend: lineTrend([2.4, 2.3, 2.35, 2.2, 2.1]),
    smallest: smallestChange({ p: 0.6, words: 24, n1: 3, n2: 2, sd: 0.45 }, limits),
  };
}

/** Numbers may differ in their last digits from machine to machine. */
function near(want: unknown, got: unknown, path = ''): string[] {
  if (typeof want === 'number' && typeof got === 'number') {
    return Math.abs(want - got) <= 1e-6 * Math.max(1, Math.abs(want)) ? [] : [`${path}: ${got} for ${want}`];
  }
  if (want === null || typeof want !== 'object')
    return want === got ? [] : [`${path}: ${String(got)} for ${String(want)}`];
  const other = (got ?? {}) as Record<string, unknown>;
  return Object.entries(want).flatMap(([key, value]) => near(value, other[key], `${path}/${key}`));
}

test('every answer is what this version has always said', () => {
  const now = JSON.parse(JSON.stringify(answers())) as unknown;
  if (process.env['CHANGE_SNAPSHOT'] === 'write' && !existsSync(file))
    writeFileSync(file, JSON.stringify(now, null, 1));
  expect(near(JSON.parse(readFileSync(file, 'utf8')), now)).toEqual([]);
});
