/**
 * Reading grade against worked values, and the family's pages against grade 6.
 * Sources: Flesch-Kincaid grade, Kincaid et al. 1975 (from memory): 100 words, 10 sentences, 135 syllables = 4.24;
 * SMOG, McLaughlin 1969 (from memory): 20 words of three or more syllables in 30 sentences = 7.79. Both recomputed.
 */
import { fleschKincaid } from 'flesch-kincaid';
import { smogFormula } from 'smog-formula';
import { syllable } from 'syllable';
import { expect, test } from 'vitest';
import { familyPage } from '../../renderer/logic/pages/kinds/family.ts';
import { textsOf } from '../../renderer/logic/pages/sheet/fit-sheets.ts';
import type { DocSheet } from '../../renderer/logic/pages/sheet/packet.ts';
import { programSheets } from '../../renderer/logic/pages/kinds/program-sheet.ts';
import {
  fleschKincaidGrade,
  readingGrade as gradeOf,
  smogGrade,
} from '../../renderer/logic/texts/reading/reading-grade.ts';
import { selfCheckCard } from '../../renderer/logic/pages/kinds/self-check-card.ts';
import { texts } from '../../renderer/logic/texts/en.ts';
import { input } from '../logic/pages/record.ts';

const readingGrade = (list: readonly string[]) => gradeOf(list, syllable);

test('the two formulas give their worked values', () => {
  expect(fleschKincaidGrade(100, 10, 135)).toBeCloseTo(4.24, 2);
  expect(smogGrade(20, 30)).toBeCloseTo(7.79, 2);
  // Two packages with the same formulas agree.
  expect(fleschKincaid({ sentence: 7, word: 83, syllable: 121 })).toBeCloseTo(fleschKincaidGrade(83, 7, 121), 10);
  expect(smogFormula({ sentence: 12, polysillabicWord: 5 })).toBeCloseTo(smogGrade(5, 12), 10);
});

test('words, sentences and syllables are counted as a reader would', () => {
  expect(readingGrade(['The cat sat on the mat. The dog ran.'])).toMatchObject({
    words: 9,
    sentences: 2,
    syllables: 9,
  });
  expect(readingGrade(['', '—'])).toBeNull();
});

test('the family summary reads at grade 6 or below', () => {
  for (const pt of [14, 16, 20] as const) {
    const packet = familyPage(input(), { pt, pictures: [], when: '', bring: '', ownWords: '' }, texts);
    const grade = readingGrade(textsOf(packet.sheets[0] as DocSheet))!;
    expect(grade.grade).toBeLessThanOrEqual(6);
    expect(grade.smog).toBeLessThanOrEqual(9);
  }
});

test('home program sheet and check card read at grade 6 or below', () => {
  const sheets = [
    ...programSheets(
      input(),
      { pt: 14, when: '', ownWords: '', drawing: () => null, inClinic: () => false, saidElsewhere: () => false },
      texts,
    )!,
    ...selfCheckCard(input(), 14, texts),
  ];
  expect(readingGrade(sheets.flatMap(textsOf))!.grade).toBeLessThanOrEqual(6);
});
