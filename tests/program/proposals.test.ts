import fc from 'fast-check';
import { expect, test } from 'vitest';
import { compose } from '../../renderer/program/compose.ts';
import { comparePrograms } from '../../renderer/program/compare.ts';
import { changedDimension, standingOf, stepDown, stepUp } from '../../renderer/program/ladder.ts';
import { propose, type Session } from '../../renderer/program/proposals.ts';
import { anyCase } from './inputs.ts';
import { client, rules } from './support.ts';

const day = (n: number): string => new Date(Date.UTC(2026, 0, 5 + n)).toISOString().slice(0, 10);
const sessions = (read: (number | null)[], more: Partial<Session> = {}, every = 3): Session[] =>
  read.map((each, i) => ({ day: day(i * every), read: each, words: 24, fatigueRise: 1, painRise: 0, ...more }));
const draft = compose(client({}, { measures: [{ code: 'legibility', value: 80, unit: '%' }] }), rules);
const standing = { lines: draft.lines, tier: draft.tier, xHeightMm: 2.4, lastChange: null };
const after = (list: Session[], ownFirst: number[] = [80, 82, 81]) => propose(list, ownFirst, standing, rules);

test('three sessions at 90 % without tiring: one step up, with the evidence shown', () => {
  const proposal = after(sessions([92, 95, 91]));
  expect(proposal).toMatchObject({ kind: 'advance', rule: 'PROG' });
  expect(proposal.evidence).toHaveLength(4);
  expect(proposal.move?.step.dimension).toBe('paper');
});

test.each([
  ['one session under 90 %', sessions([92, 88, 93]), 'hold'],
  ['tiring', sessions([92, 95, 93], { fatigueRise: 3 }), 'hold'],
  ['fatigue that nobody noted', sessions([92, 95, 93], { fatigueRise: null }), 'hold'],
  ['too few words', sessions([92, 95, 93], { words: 8 }), 'hold'],
  ['only two sessions', sessions([95, 95]), 'hold'],
  ['nothing yet', [], 'hold'],
  ['lines that nobody read', sessions([null, null, null]), 'hold'],
] as const)('%s holds the program', (_what, list, kind) => {
  expect(after([...list]).kind).toBe(kind);
});

test('on squares the letters in practice count: 80 % of them read, three sessions running', () => {
  const squares = { ...standing, tier: 2 as const };
  const letters = (right: number, of = 10) => sessions([70, 72, 71], { letters: { right, of } });
  const proposal = propose(letters(8), [60, 61], squares, rules);
  expect(proposal).toMatchObject({ kind: 'advance', rule: 'PROG' });
  expect(proposal.evidence[0]).toContain('8 of 10 of the hard letters');
  expect(propose(letters(7), [60, 61], squares, rules).kind, 'under 80 %').toBe('hold');
  expect(propose(letters(4, 4), [60, 61], squares, rules).kind, 'written too seldom to judge').toBe('hold');
  expect(propose(letters(8), [60, 61], { ...squares, tier: 3 }, rules).kind, 'lines are judged by words').toBe('hold');
});

test('pain or marked fatigue shortens the writing, even while the words get better', () => {
  for (const worse of [{ painRise: 2 }, { fatigueRise: 4 }]) {
    const proposal = after(sessions([70, 80, 95], worse));
    expect(proposal).toMatchObject({ kind: 'step-back', rule: 'REG' });
    expect(proposal.move?.step.dimension).toBe('length');
  }
});

test('it steps back against the own start only, and never while improving', () => {
  expect(after(sessions([80, 70, 64, 63])).kind).toBe('step-back');
  expect(after(sessions([80, 78, 64]), [80]).kind, 'one reading is noise').toBe('hold');
  expect(after(sessions([40, 50, 60]), [75, 76, 78]).kind, 'improving').toBe('hold');
  expect(after(sessions([60, 58, 60]), [60, 61, 60]).kind, 'low from the start').toBe('hold');
});

test('four weeks without a change is a review, and writing goes on', () => {
  const proposal = after(sessions([80, 81, 80, 79, 80], {}, 8));
  expect(proposal).toMatchObject({ kind: 'review', move: null });
  expect(proposal.because).toContain('Writing goes on');
});

test('a step changes exactly one thing, up or down, for any draft', () => {
  fc.assert(
    fc.property(anyCase(rules), fc.constantFrom('paper', 'content', 'length', null), ({ input }, last) => {
      const { lines, tier } = compose(input, rules);
      const before = standingOf(lines);
      for (const move of [stepUp(lines, tier, null, rules), stepDown(lines, tier, last as 'paper' | null, rules)]) {
        if (!move) continue;
        const now = standingOf(move.lines);
        const changed = (Object.keys(before) as (keyof typeof before)[]).filter((each) => before[each] !== now[each]);
        expect(changed).toEqual([move.step.dimension]);
        expect(changedDimension(lines, move.lines)).toBe(move.step.dimension);
      }
    }),
    { numRuns: 300, seed: 11 },
  );
});

test('steps up come to an end', () => {
  let { lines, tier } = draft;
  const seen: string[] = [];
  for (let i = 0; i < 60; i += 1) {
    const move = stepUp(lines, tier, 2.4, rules);
    if (!move || move.step.dimension === 'length') break;
    seen.push(move.step.dimension);
    ({ lines, tier } = move);
  }
  expect(seen).toContain('paper');
  expect(seen).toContain('content');
  expect(tier).toBe(4);
});

test('two programs are compared line by line', () => {
  const move = stepUp(draft.lines, draft.tier, 2.4, rules)!;
  const changes = comparePrograms(draft.lines, move.lines.slice(1));
  expect(changes.map((each) => each.kind).sort()).toEqual(['changed', 'removed']);
  expect(comparePrograms(draft.lines, draft.lines)).toEqual([]);
});
