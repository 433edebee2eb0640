/** Counts that make two texts comparable. */

export interface LetterCounts {
  letters: number;
  /** b d f h k l t */
  ascenders: number;
  /** g j p q y */
  descenders: number;
  /** a b d e g o p q: letters that close a loop. */
  closing: number;
  /** Different letters of the alphabet. */
  different: number;
}

/** Letters without accents or case; ñ counts as n. */
export const plainLetters = (text: string): string =>
  text
    .normalize('NFD')
    .toLowerCase()
    .replace(/[^a-z]/g, '');

const isAscender: ReadonlySet<string> = new Set('bdfhklt');
const isDescender: ReadonlySet<string> = new Set('gjpqy');
const isClosing: ReadonlySet<string> = new Set('abdegopq');

/** Counts of a text, capitals as small letters (as the counts of the shipped texts are kept). */
export function countLetters(text: string): LetterCounts {
  const letters = plainLetters(text);
  let ascenders = 0;
  let descenders = 0;
  let closing = 0;
  for (const letter of letters) {
    if (isAscender.has(letter)) ascenders++;
    if (isDescender.has(letter)) descenders++;
    if (isClosing.has(letter)) closing++;
  }
  return { letters: letters.length, ascenders, descenders, closing, different: new Set(letters).size };
}

/** How often a letter stands in a text, and in how many words. */
export function letterUse(text: string, letter: string): { times: number; words: number } {
  const counts = text
    .split(/\s+/)
    .map((word) => [...plainLetters(word)].filter((each) => each === letter).length)
    .filter((count) => count > 0);
  return { times: counts.reduce((sum, count) => sum + count, 0), words: counts.length };
}
