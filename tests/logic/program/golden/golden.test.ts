/**
 * Drafts and pages of 200 invented clients are what they were: a change of structure changes no word. They change with a
 * mended defect or a new rule only; then `npx node build/gates/golden.ts` writes them anew, and the commit says which and why.
 */
import { expect, test } from 'vitest';
import { allCases, type CaseText, golden, hashesOf, WHOLE_EVERY } from './golden-cases.ts';

const cases = allCases();

test('cases kept whole read as they did', () => {
  const whole = golden<Record<string, CaseText>>('whole');
  expect(Object.keys(whole)).toHaveLength(Math.ceil(cases.length / WHOLE_EVERY));
  for (const [at, kept] of Object.entries(whole)) expect(cases[Number(at)]).toEqual(kept);
});

test('every part of every case is what it was', () => {
  const kept = golden<Record<string, string>[]>('hashes');
  const changed = cases.flatMap((one, at) =>
    Object.entries(hashesOf(one))
      .filter(([part, hash]) => kept[at]?.[part] !== hash)
      .map(([part]) => `case ${at}: ${part}`),
  );
  expect(changed).toEqual([]);
  expect(kept).toHaveLength(cases.length);
});

test('the cases are no empty exercise: writing, exercise, a stop, Spanish pages and each tier are among them', () => {
  const drafts = cases.map((one) => one['draft'] ?? []);
  const some = (pattern: RegExp): number => drafts.filter((lines) => lines.some((line) => pattern.test(line))).length;
  expect(some(/^writing /)).toBeGreaterThan(60);
  // Once 20: tired clients had drills then, which the table of doses forbids; of 200 random clients 13 have them now.
  expect(some(/^exercise /)).toBeGreaterThanOrEqual(13);
  expect(some(/, stopped: /)).toBeGreaterThan(10);
  for (const tier of [1, 2, 3, 4]) expect(some(new RegExp(`^tier ${tier}`))).toBeGreaterThan(3);
  expect(new Set(cases.map((one) => one['family-summary']?.join())).size).toBeGreaterThan(100);
});
