import { doseHows } from '../../../renderer/logic/texts/dose-hows.ts';
import { fleschKincaid } from 'flesch-kincaid';
import { syllable } from 'syllable';
import { expect, test } from 'vitest';
import { rulesCurrent } from '../../../db/rules/index.ts';

const rules = rulesCurrent();

/** Flesch-Kincaid grade of a text: 0.39 words/sentence + 11.8 syllables/word - 15.59. */
function grade(text: string): number {
  const sentence = text.split(/[.!?:]+(?:\s|$)/).filter((each) => each.trim() !== '').length;
  const words = text.match(/[\p{L}\p{N}'’-]+/gu) ?? [];
  const syllables = words.reduce((sum, word) => sum + Math.max(1, syllable(word)), 0);
  return fleschKincaid({ sentence, word: words.length, syllable: syllables });
}

test('the grade is computed as published: 100 words, 10 sentences, 135 syllables = 4.24', () => {
  expect(fleschKincaid({ sentence: 10, word: 100, syllable: 135 })).toBeCloseTo(4.24, 2);
});

const english = (code: string): boolean =>
  !rules.contents.some((each) => `text-${each.code}` === code && each.language !== 'en');

test.each(rules.items.filter((item) => english(item.code)).map((item) => [item.code, item] as const))(
  'the family text of %s reads at grade 6 or below',
  (_code, item) => {
    expect(grade(item.text), item.text).toBeLessThanOrEqual(6);
  },
);

test.each(Object.entries(doseHows))('the dose %s reads at grade 6 or below', (_code, text) => {
  expect(grade(text), text).toBeLessThanOrEqual(6);
});

// The deference wording is fixed; the screen's own is for the therapist.
const fixed = new Set(['page-deference', 'screen-deference']);
test.each(rules.cautionTexts.filter((row) => !fixed.has(row.code)).map((row) => [row.code, row.text] as const))(
  'the caution %s reads at grade 6 or below',
  (_code, text) => {
    expect(grade(text), text).toBeLessThanOrEqual(6);
  },
);

test('no text names a diagnosis, scolds the writing, or talks like a form', () => {
  const names = rules.vocabulary.diagnoses
    .map((each) => each.name.replace(/[()]/g, '.'))
    .filter((name) => name.length > 3);
  for (const { code, text } of [...rules.items, ...rules.cautionTexts]) {
    if (fixed.has(code)) continue;
    expect(
      names.filter((name) => new RegExp(`\\b${name}\\b`, 'i').test(text)),
      code,
    ).toEqual([]);
    expect(text, code).not.toMatch(/messy|sloppy|bad writing|patient|compliance/i);
  }
});
