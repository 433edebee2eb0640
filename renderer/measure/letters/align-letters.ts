import { bowlsOf, hangs, LETTER_SPACE, rises } from './letter-kinds.ts';

/** What the alignment looks at in a piece of ink (letters that touch are one piece). x-heights. */
export interface Piece {
  width: number;
  /** Top above and bottom below the baseline. */
  top: number;
  bottom: number;
  /** Closed loops between the baseline and the small letters' tops. */
  bowls: number;
}

/** Letters `first` to `last` (exclusive) of the word lie in pieces `from` to `to` (exclusive). */
export interface Match {
  first: number;
  last: number;
  from: number;
  to: number;
}

/** Most letters that one piece may hold; joined words are one piece. */
const MOST_LETTERS = 24;
/** Most pieces of one letter (a bar that misses its stem, an opening). */
const MOST_PIECES = 3;
const BROKEN = 1.6;
const TOUCHING = 0.25;
const WRONG_REACH = 1.6;
/** A bowl in a letter that has none. That a letter which has one is open says nothing: it may be. */
const WRONG_BOWL = 1.6;

/**
 * Aligns the letters of a word with its pieces of ink from left to right: by width, and by which rise or hang.
 * @param widthOf expected width of a letter in this hand, x-heights
 */
export function alignLetters(
  pieces: readonly Piece[],
  word: string,
  widthOf: (char: string) => number,
): Match[] | null {
  const chars = [...word];
  const n = pieces.length;
  const m = chars.length;
  if (n === 0 || m === 0) return null;
  const cost = new Float64Array((n + 1) * (m + 1)).fill(Infinity);
  const back = new Int32Array((n + 1) * (m + 1)).fill(-1);
  const at = (i: number, j: number): number => i * (m + 1) + j;
  cost[0] = 0;
  for (let i = 0; i < n; i += 1)
    for (let j = 0; j < m; j += 1) {
      const here = cost[at(i, j)]!;
      if (here === Infinity) continue;
      let width = -LETTER_SPACE / 2;
      for (let k = 1; k <= Math.min(MOST_LETTERS, m - j); k += 1) {
        width += widthOf(chars[j + k - 1]!) + LETTER_SPACE / 2;
        const price = here + TOUCHING * (k - 1) + misfit([pieces[i]!], chars.slice(j, j + k), width);
        offer(cost, back, at(i + 1, j + k), price, at(i, j));
      }
      for (let k = 2; k <= Math.min(MOST_PIECES, n - i); k += 1) {
        const price = here + BROKEN * (k - 1) + misfit(pieces.slice(i, i + k), [chars[j]!], widthOf(chars[j]!));
        offer(cost, back, at(i + k, j + 1), price, at(i, j));
      }
    }
  if (cost[at(n, m)] === Infinity) return null;
  const matches: Match[] = [];
  for (let here = at(n, m); here !== 0;) {
    const before = back[here]!;
    const [to, last] = [Math.floor(here / (m + 1)), here % (m + 1)];
    const [from, first] = [Math.floor(before / (m + 1)), before % (m + 1)];
    matches.push({ first, last, from, to });
    here = before;
  }
  return matches.reverse();
}

function offer(cost: Float64Array, back: Int32Array, target: number, price: number, source: number): void {
  if (price >= cost[target]!) return;
  cost[target] = price;
  back[target] = source;
}

/** Price of letters for pieces: width, then tops and bottoms that should or should not be there. */
function misfit(pieces: readonly Piece[], chars: readonly string[], expected: number): number {
  let width = 0;
  let top = -Infinity;
  let bottom = -Infinity;
  let bowls = 0;
  for (const piece of pieces) {
    bowls += piece.bowls;
    width += piece.width;
    top = Math.max(top, piece.top);
    bottom = Math.max(bottom, piece.bottom);
  }
  const spread = 0.12 + 0.16 * Math.sqrt(chars.length) * Math.max(0.6, expected / chars.length);
  const off = (width - expected) / spread;
  let price = Math.min(9, (off * off) / 2);
  price += reachPrice(chars.map(rises), top > 1.27);
  price += reachPrice(chars.map(hangs), bottom > 0.25);
  price += WRONG_BOWL * Math.max(0, bowls - chars.reduce((most, char) => most + bowlsOf(char), 0));
  return price;
}

/** Some letter must, or none may. */
function reachPrice(wanted: readonly (boolean | null)[], seen: boolean): number {
  const must = wanted.includes(true);
  const may = must || wanted.includes(null);
  if (must && !seen) return WRONG_REACH;
  return seen && !may ? WRONG_REACH : 0;
}
