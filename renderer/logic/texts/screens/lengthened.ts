/**
 * English made 40 % longer (German and Spanish run 20 to 35 % longer than English in long sentences, more in short ones;
 * common practice, no source), with letters above and below the usual line. It shows what a translation would clip, and
 * what is not taken from the catalogue at all.
 */

/** How much longer a text gets, as a share of its letters. */
const LONGER = 0.4;
const FILL = 'ÄÖÜßÁÉÍÑÚ';

function stretched(text: string): string {
  if (!/\p{L}/u.test(text)) return text;
  const more = Math.ceil(text.length * LONGER);
  // In words of nine letters at most: a filling in one piece would break where no word breaks.
  const filling = [...Array(more).keys()].map((i) => (i % 10 === 0 ? ' ' : FILL[i % FILL.length]));
  return `${text}${filling.join('').trimEnd()}`;
}

/** The same texts, each string and each answer of a function longer; lists and objects within keep their shape. */
export function lengthened<T>(texts: T): T {
  const long = (value: unknown): unknown => {
    if (typeof value === 'string') return stretched(value);
    if (typeof value === 'function')
      return (...given: unknown[]) => long((value as (...g: unknown[]) => unknown)(...given));
    if (Array.isArray(value)) return value.map(long);
    if (value !== null && typeof value === 'object')
      return Object.fromEntries(Object.entries(value).map(([key, inner]) => [key, long(inner)]));
    return value;
  };
  return long(texts) as T;
}
