import { fleschKincaid } from 'flesch-kincaid';
import { smogFormula } from 'smog-formula';
import { syllable } from 'syllable';

/** How hard a text is to read: US school grade by two formulas. */
export interface ReadingGrade {
  words: number;
  sentences: number;
  syllables: number;
  /** Flesch-Kincaid grade: 0.39 words per sentence + 11.8 syllables per word - 15.59. */
  grade: number;
  /** SMOG grade: 1.043 sqrt(30 words of three or more syllables per sentence) + 3.1291. */
  smog: number;
}

/**
 * Reading grade of the sentences of a page. A text of five words or more is at least one sentence, with or without
 * a full stop; headings and names are passed over. Numbers count as words of one syllable.
 * @returns null without words
 * Source: Kincaid et al. 1975; McLaughlin 1969 (both from memory; formulas as in the flesch-kincaid and smog-formula packages).
 */
export function readingGrade(texts: readonly string[]): ReadingGrade | null {
  let words = 0;
  let sentences = 0;
  let syllables = 0;
  let long = 0;
  for (const text of texts) {
    // Names, dates and headings are no sentences: counted as such they would make any page look easy.
    if (!/[.!?]/.test(text) && text.split(/\s+/).length < 5) continue;
    for (const sentence of text.split(/[.!?]+(?=\s|$|”)/)) {
      const own = sentence.match(/[\p{L}\p{N}’']+/gu) ?? [];
      if (own.length === 0) continue;
      sentences++;
      words += own.length;
      for (const word of own) {
        const count = Math.max(1, syllable(word));
        syllables += count;
        if (count >= 3) long++;
      }
    }
  }
  if (words === 0) return null;
  return {
    words,
    sentences,
    syllables,
    grade: fleschKincaid({ sentence: sentences, word: words, syllable: syllables }),
    smog: smogFormula({ sentence: sentences, polysillabicWord: long }),
  };
}
