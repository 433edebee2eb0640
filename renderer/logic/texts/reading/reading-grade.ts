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

/** Flesch-Kincaid grade. Source: Kincaid et al. 1975 (from memory). */
export const fleschKincaidGrade = (words: number, sentences: number, syllables: number): number =>
  0.39 * (words / sentences) + 11.8 * (syllables / words) - 15.59;

/** SMOG grade from words of three or more syllables. Source: McLaughlin 1969 (from memory). */
export const smogGrade = (longWords: number, sentences: number): number =>
  1.043 * Math.sqrt(longWords * (30 / sentences)) + 3.1291;

/** What goes home is read easily up to this grade (common practice). */
export const GRADE_MOST = 6;

/**
 * Reading grade of the sentences of a page. A text of five words or more is at least one sentence, with or without
 * a full stop; headings and names are passed over. Numbers count as words of one syllable.
 * @param syllablesOf counts the syllables of one word
 * @returns null without words
 * Source: Kincaid et al. 1975; McLaughlin 1969 (both from memory).
 */
export function readingGrade(texts: readonly string[], syllablesOf: (word: string) => number): ReadingGrade | null {
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
        const count = Math.max(1, syllablesOf(word));
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
    grade: fleschKincaidGrade(words, sentences, syllables),
    smog: smogGrade(long, sentences),
  };
}
