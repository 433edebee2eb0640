import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { shippedItems, shippedRedFlags } from '../../../db/rules/screen/items-schema.ts';
import type { IntakeAnswer, RedFlagAnswer } from '../../../db/types/intake.ts';
import { openFlags, type FlagInput } from '../../../renderer/logic/intake/flags.ts';
import { answer, flagAnswer, noToAll } from './facts.ts';
import { toldEnglish } from '../../../renderer/logic/texts/screens/told-english.ts';

const state = (input: Partial<FlagInput>) =>
  openFlags({ redFlags: [], intakeAnswers: [], ...input }, shippedRedFlags, toldEnglish.flags);
const withAnswers = (intakeAnswers: IntakeAnswer[], redFlags: RedFlagAnswer[] = noToAll()) =>
  state({ intakeAnswers, redFlags });
const review = { reviewer: 'Dr. Invented', on: '2026-03-05', outcome: 'Stable, go on.', recordedBy: 'AB' };

describe('questions', () => {
  test('an unanswered question is not clear: composing may go on, approving may not', () => {
    const none = state({});
    expect(none.level).toBe('clear');
    expect(none.unasked.length).toBe(shippedRedFlags.flags.filter((flag) => flag.asked).length);
    expect(none.mayApprove).toBe(false);
    expect(none.sentence).toContain('not asked yet');
  });

  test('all answered no is clear', () => {
    const all = state({ redFlags: noToAll() });
    expect([all.level, all.mayCompose, all.mayApprove, all.sentence]).toEqual(['clear', true, true, '']);
  });

  test('each question answered yes stops with its own grade and says what to do', () => {
    for (const flag of shippedRedFlags.flags.filter((each) => each.asked)) {
      const found = state({ redFlags: [...noToAll(), flagAnswer(flag.code, true, '2026-03-04T10:00:00.000Z')] });
      expect(found.level).toBe(flag.grade);
      expect(found.open[0]?.doNow.length).toBeGreaterThan(0);
      expect(found.mayCompose || found.mayApprove).toBe(false);
    }
  });

  test('an emergency stands before a same-day flag', () => {
    const found = state({ redFlags: [flagAnswer('pain-high', true), flagAnswer('collapse', true)] });
    expect(found.open.map((flag) => flag.code)).toEqual(['collapse', 'pain-high']);
    expect(found.level).toBe('emergency');
  });

  test('talk of self-harm has a path of its own', () => {
    const found = state({ redFlags: [flagAnswer('self-harm', true)] });
    expect(found.open[0]).toMatchObject({ path: 'self-harm', call: 'crisis-service' });
  });

  test('a visit can be asked to have its own answers', () => {
    expect(state({ redFlags: noToAll(), visitId: 'another visit' }).mayApprove).toBe(false);
  });
});

describe('review', () => {
  test('a reviewed flag lets the work go on and stays listed', () => {
    const found = state({
      redFlags: [...noToAll(), { ...flagAnswer('pain-high', true, '2026-03-06T09:00:00.000Z'), review }],
    });
    expect(found.level).toBe('reviewed');
    expect(found.mayApprove).toBe(true);
    expect(found.reviewed[0]?.review?.reviewer).toBe('Dr. Invented');
  });

  test('a no at a later visit does not close what was never reviewed', () => {
    const later = { ...flagAnswer('injury', false, '2026-04-01T09:00:00.000Z'), visitId: 'later' };
    expect(state({ redFlags: [flagAnswer('injury', true), later] }).level).toBe('same-day');
  });

  test('correcting the answer of the same visit closes it', () => {
    const wrong = flagAnswer('injury', true, '2026-03-04T09:00:00.000Z');
    const right = flagAnswer('injury', false, '2026-03-04T09:01:00.000Z');
    expect(state({ redFlags: [wrong, right] }).level).toBe('clear');
  });

  test('the same sign seen after its review opens it again', () => {
    const reviewed = { ...flagAnswer('pain-high', true, '2026-03-06T09:00:00.000Z'), review };
    const again = answer('pain', 0, { after: 6, at: '2026-03-20T09:00:00.000Z' });
    const found = withAnswers([again], [...noToAll(), reviewed]);
    expect(found.level).toBe('same-day');
    expect(found.open[0]?.because.join(' ')).toContain('seen again since');
  });
});

describe('flags that arise from answers', () => {
  test.each([
    ['pain rated 5', answer('pain', 1, { before: 5 }), 'pain-high', 'same-day'],
    ['pain rising by 3', answer('pain', 1, { before: 1, after: 4 }), 'pain-high', 'same-day'],
    ['broken skin', answer('skin', 0, { detail: 'broken' }), 'open-skin', 'same-day'],
    ['hot hand', answer('skin', 0, { detail: 'hot-shiny' }), 'hot-hand', 'same-day'],
    ['skin of 0 without a detail', answer('skin', 0), 'open-skin', 'same-day'],
    ['tone of 0', answer('tone', 0), 'tone-fixed', 'same-day'],
    ['tone that is new', answer('tone', 2, { detail: 'new-or-worse' }), 'tone-rise', 'same-day'],
    ['new weakness', answer('strength', 2, { detail: 'new' }), 'spreading-weakness', 'same-day'],
    ['arm signs', answer('neck', 2, { detail: 'arm-signs' }), 'neck-arm', 'same-day'],
    ['sudden loss of view', answer('field', 1, { detail: 'sudden' }), 'stroke-signs', 'emergency'],
    ['newly found loss of view', answer('field', 1, { detail: 'newly-found' }), 'new-vision-loss', 'same-day'],
  ] as const)('%s', (_name, fact, code, level) => {
    const found = withAnswers([fact]);
    expect(found.open.map((flag) => flag.code)).toEqual([code]);
    expect(found.level).toBe(level);
    expect(found.open[0]?.sources).toEqual([`intakeAnswer/${fact.id}`]);
  });

  test('a hot hand is not called a wound as well', () => {
    expect(withAnswers([answer('skin', 0, { detail: 'hot-shiny' })]).open).toHaveLength(1);
  });

  test('pain of 4 that rose by 2 stops nothing', () => {
    expect(withAnswers([answer('pain', 1, { before: 2, after: 4 })]).level).toBe('clear');
  });

  test('one bad side is enough, whatever the other side says', () => {
    const found = withAnswers([answer('tone', 3, { side: 'right' }), answer('tone', 0, { side: 'left' })]);
    expect(found.level).toBe('same-day');
  });

  test('no answer with grades of 1 or more and low ratings opens a flag', () => {
    const codes = shippedItems.items.map((item) => item.code);
    fc.assert(
      fc.property(
        fc.constantFrom(...codes),
        fc.integer({ min: 1, max: 3 }),
        fc.integer({ min: 0, max: 2 }),
        (code, grade, rating) => {
          expect(withAnswers([answer(code, grade, { before: rating, after: rating })]).level).toBe('clear');
        },
      ),
    );
  });
});

test('steady loss as the model says it stops exercise the same day, until it is reviewed', () => {
  const loss = { at: '2026-03-02T10:00:00.000Z', because: 'Fewer words than before.' };
  expect(state({ redFlags: noToAll(), loss })).toMatchObject({
    level: 'same-day',
    open: [{ code: shippedRedFlags.steadyLoss.flag, sources: ['retests'] }],
  });
  expect(state({ redFlags: noToAll(), loss: null }).level).toBe('clear');
});

test('flags are decided from the facts alone, in any order', () => {
  const facts = [answer('pain', 0, { after: 6 }), answer('tone', 3), answer('skin', 2)];
  fc.assert(
    fc.property(fc.shuffledSubarray(facts, { minLength: 3 }), (shuffled) => {
      expect(withAnswers(shuffled)).toEqual(withAnswers(facts));
    }),
  );
});
