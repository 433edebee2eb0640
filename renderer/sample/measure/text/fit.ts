import { alignWords } from './align-words.ts';
import type { WordAlignment } from './align-words.ts';

/** How the text meant fits the words found. */
export interface TextFit {
  /** Text of each word, line by line; null where none fits. */
  texts: (string | null)[][];
  fits: boolean;
  /** The words fit clearly better from right to left (or from the end): the picture is mirrored or upside down. */
  turned: 'mirrored' | 'upside-down' | null;
}

/** Mean price per word from which the text is that of another page. */
const UNFIT = 1.6;
/** At least this share of the words found must be one word of the text each. */
const WORD_BY_WORD = 0.7;
/** The turned reading must be this much cheaper, over at least this many words. */
const CLEARLY = 0.5;
const LEAST_WORDS = 8;

/** Words of the text in order; line breaks need not be those of the page. */
export function fitText(widths: readonly (readonly number[])[], text: string): TextFit {
  const words = text.split(/\s+/).filter((word) => word.length > 0);
  const straight = alignWords(widths.flat(), words);
  const turned = turnOf(widths, words, straight);
  const texts: (string | null)[][] = [];
  let k = 0;
  for (const line of widths) {
    texts.push(straight.texts.slice(k, k + line.length));
    k += line.length;
  }
  const single = straight.texts.filter((word) => word !== null && !word.includes(' ')).length;
  return { texts, fits: straight.cost < UNFIT && single >= WORD_BY_WORD * straight.texts.length, turned };
}

function turnOf(
  widths: readonly (readonly number[])[],
  words: readonly string[],
  straight: WordAlignment,
): TextFit['turned'] {
  if (words.length < LEAST_WORDS || straight.cost < CLEARLY) return null;
  const mirrored = alignWords(
    widths.flatMap((line) => [...line].reverse()),
    words,
  ).cost;
  const upside = alignWords([...widths.flat()].reverse(), words).cost;
  if (Math.min(mirrored, upside) > straight.cost - CLEARLY) return null;
  return mirrored < upside ? 'mirrored' : 'upside-down';
}
