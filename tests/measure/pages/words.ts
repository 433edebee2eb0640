import type { Random } from '../../../build/letters/random.ts';

/** Everyday words of our own choosing; together they use every lower-case letter. */
const WORDS = (
  'the and milk bread coffee garden letter morning seven quick jacket table water summer window paper people yellow ' +
  'fox lazy kitchen bring phone number today please remember apples butter cheese doctor visit friday evening walk ' +
  'with our dog along river before dinner call back about next week zero box six quiet voice happy birthday ' +
  'sister brother cousin neighbor market list pencil blanket pillow orange grape juice warm socks under chair over ' +
  'there where when again always never maybe good better best fixed exact open close small large'
).split(' ');

/** Short words, figures and capitals as they stand in lists, letters and forms. */
const OTHERS = (
  'a I to of in on it is we my no go up at 7 24 1963 350 18 2.50 9:15 Mr Mrs Tuesday March Monday June North ' +
  'OK USA TEL BOX Street Road Avenue Dear Room Bus 12 305'
).split(' ');

/** A line of words; the first with a capital, some with commas, the last with a point when asked for. */
export function lineOfWords(
  random: Random,
  count: number,
  punctuation: boolean,
  vocabulary: 'plain' | 'mixed' = 'plain',
): string[] {
  return Array.from({ length: count }, (_, index) => {
    const word = vocabulary === 'mixed' && random.next() < 0.35 ? random.pick(OTHERS) : random.pick(WORDS);
    if (!punctuation) return word;
    if (index === 0) return (word[0] as string).toUpperCase() + word.slice(1);
    if (index === count - 1) return `${word}.`;
    return random.next() < 0.12 ? `${word},` : word;
  });
}
