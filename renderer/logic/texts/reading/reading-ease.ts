/** How easily a page reads in languages that have a formula of their own; English is told as a school grade. */
import type { Language } from '../languages.ts';
import { germanSyllables } from './german-syllables.ts';
import type { ReadingGrade } from './reading-grade.ts';
import { spanishSyllables } from './spanish-syllables.ts';

/** Szigriszt perspicuity of Spanish: 65 or more reads easily. Source: Szigriszt 1993 (from memory). */
export const szigrisztPerspicuity = (words: number, sentences: number, syllables: number): number =>
  206.835 - 62.3 * (syllables / words) - words / sentences;

/** Flesch reading ease, adapted to German: 60 to 70 is plain, 70 and more easy. Source: Amstad 1978 (from memory). */
export const amstadEase = (words: number, sentences: number, syllables: number): number =>
  180 - words / sentences - 58.5 * (syllables / words);

interface EaseFormula {
  /** As it is named beside its value. */
  name: string;
  language: string;
  syllablesOf: (word: string) => number;
  ease: (words: number, sentences: number, syllables: number) => number;
  /** What goes home reads at least so easily (common practice). */
  least: number;
}

const formulas: Readonly<Record<Exclude<Language, 'en'>, EaseFormula>> = {
  es: {
    name: 'Szigriszt perspicuity',
    language: 'Spanish',
    syllablesOf: spanishSyllables,
    ease: szigrisztPerspicuity,
    least: 65,
  },
  de: {
    name: 'Flesch reading ease in Amstad’s form',
    language: 'German',
    syllablesOf: germanSyllables,
    ease: amstadEase,
    least: 65,
  },
};

/** Formula of a language; null = told as a school grade. */
export const easeFormula = (language: Language): EaseFormula | null => (language === 'en' ? null : formulas[language]);

/** A page's reading grade, with its ease where the language has a formula. */
export type ReadingEase = ReadingGrade & { formula: EaseFormula | null; ease: number };

export function readingEase(grade: ReadingGrade, language: Language): ReadingEase {
  const formula = easeFormula(language);
  return { ...grade, formula, ease: formula?.ease(grade.words, grade.sentences, grade.syllables) ?? 0 };
}
