const SMALL = ['no', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'ten', 'eleven', 'twelve'];

/** A small count as a word, a larger one in digits. */
export const countWord = (n: number): string => SMALL[n] ?? String(n);

/** "1 word", "2 words"; with `countInWords` "one word", "two words". */
export const plural = (n: number, one: string, many = `${one}s`, inWords = false): string =>
  `${inWords ? countWord(n) : n} ${n === 1 ? one : many}`;

/** First letter large, for the start of a sentence. */
export const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** "a", "a and b", "a, b and c". */
export const listed = (items: readonly string[]): string =>
  items.length < 2 ? (items[0] ?? '') : `${items.slice(0, -1).join(', ')} and ${items.at(-1)}`;
