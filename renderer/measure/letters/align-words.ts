import { LETTER_SPACE, usualWidth } from './letter-kinds.ts';

/** Price of a width that is off by a factor e (squared, halved): widths of hands vary by about a fifth. */
const WIDTH_SPREAD = 0.22;
const WORST_FIT = 4;
/** Price of a word left out, or of ink that is no word of the text. */
const SKIP = 3;
/** Price of two words read as one, or one read as two. */
const REGROUP = 2.5;

export interface WordAlignment {
  /** Text of each found word, in reading order; null where none fits. Two words read as one are joined by a space. */
  texts: (string | null)[];
  /** Mean price per word of the text: under about 1.5 the text fits the page. */
  cost: number;
}

/** Expected ink width of a word, x-heights. */
export function expectedWidth(word: string): number {
  let width = LETTER_SPACE * Math.max(0, word.length - 1);
  for (const char of word) width += usualWidth(char);
  return width;
}

/**
 * Aligns the words of the text with the words found, by their widths, so that a missed or split word shifts nothing else.
 * @param widths ink widths of the words found, x-heights, in reading order
 * @param words words of the text in order
 */
export function alignWords(widths: readonly number[], words: readonly string[]): WordAlignment {
  const n = widths.length;
  const m = words.length;
  if (n === 0 || m === 0) return { texts: widths.map(() => null), cost: Infinity };
  const expected = words.map(expectedWidth);
  const scale = widthScale(widths, expected);
  const cost = new Float64Array((n + 1) * (m + 1)).fill(Infinity);
  const step = new Uint8Array((n + 1) * (m + 1));
  const at = (i: number, j: number): number => i * (m + 1) + j;
  cost[0] = 0;
  const offer = (i: number, j: number, price: number, kind: number): void => {
    if (price < cost[at(i, j)]!) {
      cost[at(i, j)] = price;
      step[at(i, j)] = kind;
    }
  };
  for (let i = 0; i <= n; i += 1)
    for (let j = 0; j <= m; j += 1) {
      const here = cost[at(i, j)]!;
      if (here === Infinity) continue;
      if (i < n) offer(i + 1, j, here + SKIP, 1);
      if (j < m) offer(i, j + 1, here + SKIP, 2);
      if (i < n && j < m) offer(i + 1, j + 1, here + fit(widths[i]!, scale * expected[j]!), 3);
      if (i < n && j + 1 < m)
        offer(i + 1, j + 2, here + REGROUP + fit(widths[i]!, scale * (expected[j]! + expected[j + 1]! + 0.6)), 4);
      if (i + 1 < n && j < m)
        offer(i + 2, j + 1, here + REGROUP + fit(widths[i]! + widths[i + 1]! + 0.5, scale * expected[j]!), 5);
    }
  const texts: (string | null)[] = widths.map(() => null);
  let [i, j] = [n, m];
  while (i > 0 || j > 0) {
    const kind = step[at(i, j)]!;
    if (kind === 1) i -= 1;
    else if (kind === 2) j -= 1;
    else if (kind === 3) {
      i -= 1;
      j -= 1;
      texts[i] = words[j]!;
    } else if (kind === 4) {
      i -= 1;
      j -= 2;
      texts[i] = `${words[j]!} ${words[j + 1]!}`;
    } else {
      // A word in two pieces: the pieces keep no text, their letters cannot be told.
      i -= 2;
      j -= 1;
    }
  }
  return { texts, cost: cost[at(n, m)]! / m };
}

/** How wide this hand writes: total ink over total expected, when the counts are alike. */
function widthScale(widths: readonly number[], expected: readonly number[]): number {
  const mean = (list: readonly number[]): number => list.reduce((a, b) => a + b, 0) / list.length;
  return Math.max(0.5, Math.min(2, mean(widths) / mean(expected)));
}

function fit(width: number, expected: number): number {
  const off = Math.log(Math.max(width, 0.05) / expected) / WIDTH_SPREAD;
  return Math.min(WORST_FIT, (off * off) / 2);
}
