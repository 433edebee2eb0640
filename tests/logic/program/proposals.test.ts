import fc from 'fast-check';
import { expect, test } from 'vitest';
import { compose } from '../../../renderer/logic/program/draft/compose.ts';
import { comparePrograms } from '../../../renderer/logic/program/ladder/compare.ts';
import { changedDimension, standingOf, stepDown, stepUp } from '../../../renderer/logic/program/ladder/paper-ladder.ts';
import { propose, type Session } from '../../../renderer/logic/program/ladder/proposals.ts';
import { practiceBack, sessionsOf } from '../../../renderer/logic/program/ladder/sessions.ts';
import { clientId, id, record } from '../pages/record.ts';
import { anyCase } from './inputs.ts';
import { client, rules } from './support.ts';
import { texts } from '../../../renderer/logic/texts/en.ts';
import { toldEnglish } from '../../../renderer/logic/texts/screens/told-english.ts';
import { englishTelling } from '../../../renderer/logic/texts/screens/telling.ts';

/** What the model of change says; each test sets its own. */
const none = { better: false, back: false, ready: false, plateau: false };
const ready = { ...none, ready: true };

const day = (n: number): string => new Date(Date.UTC(2026, 0, 5 + n)).toISOString().slice(0, 10);
const sessions = (read: (number | null)[], more: Partial<Session> = {}, every = 3): Session[] =>
  read.map((each, i) => ({ day: day(i * every), read: each, words: 24, fatigueRise: 1, painRise: 0, ...more }));
const draft = compose(client({}, { measures: [{ code: 'legibility', value: 80, unit: '%' }] }), rules);
const standing = { lines: draft.lines, tier: draft.tier, xHeightMm: 2.4, lastChange: null };
const after = (list: Session[], signs = none) => propose(list, signs, standing, rules, englishTelling);

test('very likely ready, without tiring: one step up, with the evidence shown', () => {
  const proposal = after(sessions([92, 95, 91]), ready);
  expect(proposal).toMatchObject({ kind: 'advance', rule: 'PROG' });
  expect(proposal.evidence).toHaveLength(4);
  expect(proposal.move?.step.dimension).toBe('paper');
});

test.each([
  ['tiring', sessions([92, 95, 93], { fatigueRise: 3 }), 'hold'],
  ['fatigue that nobody noted', sessions([92, 95, 93], { fatigueRise: null }), 'hold'],
  ['too few words', sessions([92, 95, 93], { words: 8 }), 'hold'],
  ['only two sessions', sessions([95, 95]), 'hold'],
  ['nothing yet', [], 'hold'],
  ['lines that nobody read', sessions([null, null, null]), 'hold'],
] as const)('%s holds the program', (_what, list, kind) => {
  expect(after([...list], ready).kind).toBe(kind);
});

test('on squares the letters in practice count: 80 % of them read, three sessions running', () => {
  const squares = { ...standing, tier: 2 as const };
  const letters = (right: number, of = 10) => sessions([70, 72, 71], { letters: { right, of } });
  const proposal = propose(letters(8), none, squares, rules, englishTelling);
  expect(proposal).toMatchObject({ kind: 'advance', rule: 'PROG' });
  expect(proposal.evidence[0]).toContain('8 of 10 of the hard letters');
  expect(propose(letters(7), none, squares, rules, englishTelling).kind, 'under 80 %').toBe('hold');
  expect(propose(letters(4, 4), none, squares, rules, englishTelling).kind, 'written too seldom to judge').toBe('hold');
  expect(
    propose(letters(8), none, { ...squares, tier: 3 }, rules, englishTelling).kind,
    'lines are judged by words',
  ).toBe('hold');
});

test('pain or marked fatigue shortens the writing, even while the words get better', () => {
  for (const worse of [{ painRise: 2 }, { fatigueRise: 4 }]) {
    const proposal = after(sessions([70, 80, 95], worse));
    expect(proposal).toMatchObject({ kind: 'step-back', rule: 'REG' });
    expect(proposal.move?.step.dimension).toBe('length');
  }
});

/** Eight earlier practice days that began at 2, then a week that began as given. */
const weekAfter = (starts: number[]): Session[] => [
  ...sessions(
    Array.from({ length: 8 }, () => null),
    { startedAt: 2, fatigueRise: 1, painRise: null },
    1,
  ),
  ...starts.map((startedAt, i) => ({ ...sessions([null])[0]!, day: day(10 + i), startedAt })),
];

test('two days that begin two points more tired than usual cut the length by a quarter; one day, or few days, do not', () => {
  const proposal = after(weekAfter([2, 4, 2, 4]));
  expect(proposal).toMatchObject({ kind: 'step-back', rule: 'REG' });
  expect(proposal.evidence).toHaveLength(2);
  expect(proposal.move?.step.dimension).toBe('length');
  const minutes = (lines: readonly { kind: string; dose: { minutes: number | null; timesPerDay: number | null } }[]) =>
    lines
      .filter(({ kind }) => kind === 'writing')
      .reduce((sum, { dose }) => sum + (dose.minutes ?? 0) * (dose.timesPerDay ?? 1), 0);
  const share = minutes(proposal.move!.lines) / minutes(standing.lines);
  expect(share).toBeLessThanOrEqual(0.76);
  expect(share).toBeGreaterThanOrEqual(0.6);
  expect(after(weekAfter([2, 4, 2, 3])).kind).toBe('hold');
  expect(after(weekAfter([4, 4]).slice(-4)).kind, 'the usual is not known yet').toBe('hold');
});

test('what came back of the practice is evidence, and little practice is asked about before anything is changed', () => {
  const practice = { days: 12, daysPerWeek: 4.7, daysAsked: 5, minutesADay: 18, minutesAsked: 25, linesADay: 4 };
  const flat = sessions([60, 61, 60, 60], {}, 12);
  const said = (daysPerWeek: number | null) =>
    propose(
      flat,
      { ...none, plateau: true },
      { ...standing, practice: { ...practice, daysPerWeek } },
      rules,
      englishTelling,
    );
  expect(said(4.7).evidence.at(-1)).toBe('Practiced on 4.7 of 5 days a week, 18 of 25 minutes, 4 lines a day.');
  expect(said(4.7).because).toContain('change one thing');
  expect(said(1.2).because).toContain('ask first what is in its way');
  expect(said(null).because).toContain('change one thing');
});

test('practice days tell how tired they began, pain against the first of them, and how much was done of what was asked', () => {
  const log = { clientId, at: '2026-04-20T09:00:00.000Z', by: 'JM', breaks: null, paper: '', grip: '', note: '' };
  const logged = record((r) => {
    r.practiceLogs = [
      { ...log, id: id(), date: '2026-04-17', minutes: 20, lines: 6, fatigueBefore: 4, fatigueAfter: 5, pain: 3 },
      { ...log, id: id(), date: '2026-04-16', minutes: 10, lines: 4, fatigueBefore: 2, fatigueAfter: 3, pain: 1 },
      { ...log, id: id(), date: '2026-04-01', minutes: 90, lines: 90, fatigueBefore: 9, fatigueAfter: 9, pain: 9 },
    ];
  });
  const practice = sessionsOf(logged).filter((each) => each.startedAt != null);
  expect(practice.map(({ day: on, startedAt, painRise }) => [on, startedAt, painRise])).toEqual([
    ['2026-04-16', 2, 0],
    ['2026-04-17', 4, 2],
  ]);
  expect(practiceBack(logged)).toMatchObject({
    days: 2,
    daysAsked: 5,
    minutesADay: 15,
    minutesAsked: 20,
    linesADay: 5,
  });
});

test('it steps back, goes on or reviews as the model of change says', () => {
  const list = sessions([80, 70, 64, 63]);
  expect(after(list, { ...none, back: true }).kind).toBe('step-back');
  expect(after(list).kind, 'falling readings alone are noise').toBe('hold');
  expect(after(list, { ...none, better: true }).because).toBe('Getting better: go on.');
  const review = after(list, { ...none, plateau: true });
  expect(review).toMatchObject({ kind: 'review', move: null });
  expect(review.because).toContain('Writing goes on');
});

test('a step changes exactly one thing, up or down, for any draft', () => {
  fc.assert(
    fc.property(anyCase(rules), fc.constantFrom('paper', 'content', 'length', null), ({ input }, last) => {
      const { lines, tier } = compose(input, rules);
      const before = standingOf(lines);
      for (const move of [
        stepUp(lines, tier, null, rules, toldEnglish.ladder),
        stepDown(lines, tier, last as 'paper' | null, rules, toldEnglish.ladder),
      ]) {
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
    const move = stepUp(lines, tier, 2.4, rules, toldEnglish.ladder);
    if (!move || move.step.dimension === 'length') break;
    seen.push(move.step.dimension);
    ({ lines, tier } = move);
  }
  expect(seen).toContain('paper');
  expect(seen).toContain('content');
  expect(tier).toBe(4);
});

test('two programs are compared line by line', () => {
  const move = stepUp(draft.lines, draft.tier, 2.4, rules, toldEnglish.ladder)!;
  const changes = comparePrograms(draft.lines, move.lines.slice(1), rules, toldEnglish.ladder, texts.dose);
  expect(changes.map((each) => each.kind).sort()).toEqual(['changed', 'removed']);
  expect(comparePrograms(draft.lines, draft.lines, rules, toldEnglish.ladder, texts.dose)).toEqual([]);
});
