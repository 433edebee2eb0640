/** Words of the rule table (titles, names, questions, reasons) in a language of the screens. */
import type { Precaution } from '../../../db/types/client.ts';
import { textDigest } from './text-digest.ts';

/** The words of a text in another language; a text without them stays as it is: the clinic's own words. */
export type TableWords = (english: string) => string;

/** A precaution of the table in other words; the therapist's own stay. */
export const precautionIn = ({ code, text }: Precaution, words: TableWords): string =>
  code === null ? text : words(text);

/**
 * @param rows by their English: a text whose English changes is no longer found, and stays English
 * @param printed shipped texts of printed pages, each with the digest of its English
 */
export function tableWordsIn(
  rows: Readonly<Record<string, string>>,
  printed: Readonly<Record<string, { english: string; text: string }>>,
): TableWords {
  const byDigest = new Map(Object.values(printed).map(({ english, text }) => [english, text]));
  const known = new Map(Object.entries(rows));
  return (english) => {
    if (english === '') return english;
    let text = known.get(english);
    if (text === undefined) {
      text = byDigest.get(textDigest(english)) ?? english;
      known.set(english, text);
    }
    return text;
  };
}

/** Parts of the rules in use that are not read on a screen: texts to write, translations, numbers. */
const NOT_READ: ReadonlySet<string> = new Set(['texts', 'sampleTexts', 'translations', 'repeatPairs', 'contents']);

/** The same data with each text in other words; codes have none and stay. */
export function inWords<T>(part: T, words: TableWords): T {
  const walk = (value: unknown): unknown => {
    if (typeof value === 'string') return words(value);
    if (Array.isArray(value)) return value.map(walk);
    if (value !== null && typeof value === 'object')
      return Object.fromEntries(
        Object.entries(value).map(([key, inner]) => [key, NOT_READ.has(key) ? inner : walk(inner)]),
      );
    return value;
  };
  return walk(part) as T;
}
