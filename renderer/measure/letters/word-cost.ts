import { hangs, LETTER_SPACE, rises, usualWidth } from './letter-kinds.ts';

/** What is expected of a word's ink: its width and where letters rise and hang, as shares of that width. */
export interface Expected {
  text: string;
  letters: number;
  width: number;
  tall: Part[];
  hanging: Part[];
  /** Ends with a point or comma. */
  ends: boolean;
}

interface Part {
  at: number;
  /** Whether it must be there: hands differ in t, f and others. */
  must: boolean;
}

/** What is seen of a run of letters: places along the line, x-heights. */
export interface Seen {
  from: number;
  to: number;
  tall: readonly number[];
  hanging: readonly number[];
}

/** Widths differ by this (ln), more so for short words. */
const SPREAD = 0.14;
const SPREAD_OF_LETTER = 0.42;
const WORST = 6;
/** Price of a part that should be there or should not, and how far (letters) it may be off. */
const MISSING = 1.1;
const FOREIGN = 0.9;
const OPTIONAL = 0.15;
const OFF = 0.9;

const isLetter = (char: string): boolean => /[\p{L}\p{N}]/u.test(char);

/** What a word of the text should look like. @param widthOf width of a letter in this hand, x-heights */
export function expectedOf(text: string, widthOf: (char: string) => number = usualWidth): Expected {
  const chars = [...text].filter(isLetter);
  const own = chars.length > 0 ? chars : [...text];
  const width = own.reduce((sum, char) => sum + widthOf(char), 0) + LETTER_SPACE * (own.length - 1);
  const tall: Part[] = [];
  const hanging: Part[] = [];
  let at = 0;
  for (const char of own) {
    const middle = (at + widthOf(char) / 2) / width;
    const [up, down] = [rises(char), hangs(char)];
    if (up !== false) tall.push({ at: middle, must: up === true });
    if (down !== false) hanging.push({ at: middle, must: down === true });
    at += widthOf(char) + LETTER_SPACE;
  }
  return { text, letters: own.length, width, tall, hanging, ends: /[.,;:!?]['’"”]?$/u.test(text) };
}

/** Price of some ink as a word of the text. @param scale width of this hand to the usual one */
export function wordCost(seen: Seen, word: Expected, scale: number): number {
  const width = Math.max(0.1, seen.to - seen.from);
  const spread2 = SPREAD ** 2 + SPREAD_OF_LETTER ** 2 / word.letters;
  // A letter I or 1 may have any width: a stroke, or with bars.
  const off = Math.log(width / Math.max(0.3, scale * word.width));
  const price = Math.min(WORST, (off * off) / (2 * spread2));
  return (
    price +
    partsCost(seen.tall, word.tall, seen.from, width, word.letters) +
    partsCost(seen.hanging, word.hanging, seen.from, width, word.letters)
  );
}

/** Matches parts seen with parts expected, in order. */
function partsCost(
  seen: readonly number[],
  expected: readonly Part[],
  from: number,
  width: number,
  letters: number,
): number {
  const m = expected.length;
  let row = new Float64Array(m + 1);
  for (let j = 0; j < m; j += 1) row[j + 1] = row[j]! + (expected[j]!.must ? MISSING : OPTIONAL);
  for (const place of seen) {
    const at = (place - from) / width;
    const next = new Float64Array(m + 1);
    next[0] = row[0]! + FOREIGN;
    for (let j = 0; j < m; j += 1) {
      const part = expected[j]!;
      const far = ((at - part.at) * letters) / OFF;
      const match = row[j]! + Math.min(2, (far * far) / 2);
      const left = next[j]! + (part.must ? MISSING : OPTIONAL);
      const foreign = row[j + 1]! + FOREIGN;
      next[j + 1] = Math.min(match, left, foreign);
    }
    row = next;
  }
  return row[m]!;
}
