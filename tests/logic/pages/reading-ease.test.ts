/**
 * How hard the pages are that go home: Flesch-Kincaid grade 6 at most in English, in Spanish (Szigriszt) and German
 * (Amstad) a reading ease of 65 or more (all formulas from memory), for every worked client, not only for a kind one.
 */
import { syllable } from 'syllable';
import { expect, test } from 'vitest';
import { rulesInUse } from '../../../db/rules/in-use.ts';
import { practiceRequestOf } from '../../../renderer/logic/pages/practice/practice-request.ts';
import { buildPacket } from '../../../renderer/logic/pages/sheet/build-packet.ts';
import { textsOf } from '../../../renderer/logic/pages/sheet/fit-sheets.ts';
import { emptyWords } from '../../../renderer/logic/pages/sheet/page-choices.ts';
import { compose } from '../../../renderer/logic/program/draft/compose.ts';
import { readFindings } from '../../../renderer/logic/program/facts/read-findings.ts';
import { type Language, languages } from '../../../renderer/logic/texts/languages.ts';
import {
  amstadEase,
  easeFormula,
  readingEase,
  szigrisztPerspicuity,
} from '../../../renderer/logic/texts/reading/reading-ease.ts';
import { readingGrade } from '../../../renderer/logic/texts/reading/reading-grade.ts';
import { workedCases } from '../../cases/judge.ts';
import { input, record } from './record.ts';

const rules = rulesInUse(null);
const cases = ['stroke-and-brain', 'movement', 'hand-and-joint', 'weak-and-tired', 'senses-set-up-wishes']
  .flatMap((name) => workedCases(`${name}.json`))
  // One in three: each page is laid out several times until it fits.
  .filter((_, i) => i % 3 === 0);

function textsFor(kind: 'family-summary' | 'caregiver', language: Language, findings: unknown): string[] {
  const read = readFindings(findings, rules);
  if (!read.ok) throw new Error(read.reason);
  const { lines } = compose(read.input, rules);
  const from = input({
    record: record((r) => {
      r.programs.forEach((program) => (program.lines = lines));
      // The therapist's own words are in the therapist's own language, and are not ours.
      if (language !== 'en') r.goals = [];
    }),
  });
  const practice = practiceRequestOf(from, rules, languages[language].texts);
  const packet = buildPacket(
    kind,
    from,
    {
      pt: 14,
      withPictures: false,
      withLog: false,
      withCard: false,
      withPractice: false,
      withDrawings: true,
      language,
      withEnglish: false,
      words: emptyWords(),
      withDaily: false,
      withFurther: false,
      practice,
    },
    rules,
  );
  return packet.sheets.flatMap((sheet) => (sheet.type === 'doc' ? textsOf(sheet) : []));
}

test.each(['family-summary', 'caregiver'] as const)('%s: grade 6 at most, reading ease of 65 or more', (kind) => {
  for (const { name, findings } of cases) {
    const en = readingGrade(textsFor(kind, 'en', findings), syllable)!;
    expect([name, en.grade <= 6, en.grade]).toEqual([name, true, en.grade]);
    for (const language of ['es', 'de'] as const) {
      const { syllablesOf, least } = easeFormula(language)!;
      const { ease } = readingEase(readingGrade(textsFor(kind, language, findings), syllablesOf)!, language);
      expect([name, language, ease >= least, ease]).toEqual([name, language, true, ease]);
    }
  }
});

test('the formula of Amstad: 100 words, 10 sentences, 160 syllables = 76.4', () => {
  expect(amstadEase(100, 10, 160)).toBeCloseTo(76.4, 3);
});

test('the formula: 100 words, 10 sentences, 200 syllables = 72.2', () => {
  expect(szigrisztPerspicuity(100, 10, 200)).toBeCloseTo(72.235, 3);
});
