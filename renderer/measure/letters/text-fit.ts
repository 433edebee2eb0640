import { median, seededNumbers } from '../order-statistics.ts';
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
/**
 * The text must be cheaper than this share of the same words in other orders: what a wrong text costs on this page.
 * On 140 drawn pages whose word widths were scattered by 15 %, the right text came to 0.58 or less on 19 of 20, a wrong
 * one to 0.73 or more on 49 of 50.
 */
const BETTER = 0.65;
const ORDERS = 7;
/** So many different words are needed for that. */
const LEAST_DIFFERENT = 6;
/** At least this share of the words found must be one word of the text each. */
const WORD_BY_WORD = 0.7;
/** The turned reading must be this much cheaper, over at least this many words. */
const CLEARLY = 0.5;
const LEAST_WORDS = 8;

/** Words of the text in order; line breaks need not be those of the page. */
export function fitText(widths: readonly (readonly number[])[], text: string): TextFit {
  const words = text.split(/\s+/).filter((word) => word.length > 0);
  const found = widths.flat();
  const straight = alignWords(found, words);
  const turned = turnOf(widths, words, straight);
  const texts: (string | null)[][] = [];
  let k = 0;
  for (const line of widths) {
    texts.push(straight.texts.slice(k, k + line.length));
    k += line.length;
  }
  const single = straight.texts.filter((word) => word !== null && !word.includes(' ')).length;
  const fits =
    straight.cost < UNFIT &&
    single >= WORD_BY_WORD * straight.texts.length &&
    (new Set(words).size < LEAST_DIFFERENT || straight.cost < BETTER * costInOtherOrders(found, words));
  return { texts, fits, turned };
}

/** Median price of the words in orders drawn by lot. */
function costInOtherOrders(widths: readonly number[], words: readonly string[]): number {
  const chance = seededNumbers(1);
  const costs = Array.from({ length: ORDERS }, () => {
    const order = [...words];
    for (let i = order.length - 1; i > 0; i -= 1) {
      const other = Math.floor(chance() * (i + 1));
      [order[i], order[other]] = [order[other]!, order[i]!];
    }
    return alignWords(widths, order).cost;
  });
  return median(costs)!;
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
