import { describe, expect, test } from 'vitest';
import { shippedItems } from '../../../db/rules/screen/items-schema.ts';
import { openItems, resumeAt, type OpeningInput } from '../../../renderer/logic/intake/opening.ts';
import { answer } from './facts.ts';
import { toldEnglish } from '../../../renderer/logic/texts/screens/told-english.ts';

const asked = (input: Partial<OpeningInput>): string[] =>
  openItems({ answers: [], diagnoses: [], ...input }, shippedItems, toldEnglish.findings)
    .filter((state) => state.state === 'asked')
    .map((state) => state.item.code);
const eight = ['hand-choice', 'skin', 'pain', 'tone', 'touch', 'grasp', 'tremor', 'seating'];
const opened = (input: Partial<OpeningInput>): string[] => asked(input).filter((code) => !eight.includes(code));

describe('the screen is short first', () => {
  test('eight items for everyone, in this order', () => {
    expect(asked({})).toEqual(eight);
  });

  test('a good screen stays at eight', () => {
    expect(asked({ answers: eight.map((code) => answer(code, 3)) })).toEqual(eight);
  });

  test.each([
    ['grasp', 2, ['in-hand', 'opposition', 'wrist', 'arm-support', 'rotation', 'strength']],
    ['tone', 2, ['wrist', 'arm-support']],
    ['seating', 2, ['trunk', 'neck']],
    ['touch', 2, ['position-sense']],
    ['copying', 2, ['copying', 'language', 'attention']],
  ] as const)('%s of 2 opens what depends on it', (code, grade, more) => {
    expect(opened({ answers: [answer(code, grade)] })).toEqual(more);
  });

  test('one affected side opens what both sides would', () => {
    const answers = [answer('touch', 3, { side: 'right' }), answer('touch', 1, { side: 'left' })];
    expect(opened({ answers })).toEqual(['position-sense']);
  });

  test('a diagnosis of the brain opens seeing, copying, language and attention', () => {
    expect(opened({ diagnoses: ['parkinson'] })).toEqual(['acuity', 'field', 'copying', 'language', 'attention']);
    expect(opened({ diagnoses: ['osteoarthritis'] })).toEqual([]);
  });

  test('drift opens field and copying; a falling line also fatigue', () => {
    expect(opened({ measures: [{ code: 'baseline-angle', value: 2.5 }] })).toEqual(['field', 'copying']);
    expect(opened({ measures: [{ code: 'baseline-angle', value: -2.5 }] })).toEqual(['field', 'copying', 'fatigue']);
    expect(opened({ measures: [{ code: 'baseline-angle', value: null }] })).toEqual([]);
  });

  test('attention before work at home, what matters in the goal talk', () => {
    expect(opened({ homeProgram: true })).toEqual(['attention']);
    expect(opened({ goalTalk: true })).toEqual(['motivation']);
  });

  test('the therapist may open any item', () => {
    expect(opened({ openedByHand: ['rotation'] })).toEqual(['rotation']);
  });

  test('an untested item opens nothing', () => {
    expect(opened({ answers: [answer('grasp', null)] })).toEqual([]);
  });

  test('each opened item says why', () => {
    const states = openItems(
      { answers: [answer('grasp', 1)], diagnoses: ['stroke'] },
      shippedItems,
      toldEnglish.findings,
    );
    for (const state of states) expect(state.because === '').toBe(state.state === 'closed');
  });
});

test('the screen resumes at the first unanswered item', () => {
  const at = (codes: string[]) =>
    resumeAt(
      openItems({ answers: codes.map((code) => answer(code, 3)), diagnoses: [] }, shippedItems, toldEnglish.findings),
    );
  expect(at([])).toBe('hand-choice');
  expect(at(['hand-choice', 'skin', 'tone'])).toBe('pain');
  expect(at(eight)).toBeNull();
});
