import { instance, lend } from './instance.ts';
import type { Instance, Lent } from './instance.ts';

/** The sums of curves.as. They have a small memory of their own: the pixels of a page stay where they are meanwhile. */
let own: Instance | null | undefined;

function room(sizes: readonly number[]): Lent | null {
  own = own === undefined ? instance() : own;
  return own && lend(sizes, own);
}

/** 64-bit floats, and how many make a vector. */
const FLOAT = 8;
const LANES = 2;
/** Tops whose likelihoods are multiplied before a logarithm is taken. */
const PRODUCT = 16;

/** What a round of the page's model asks: tops with their lines, offsets of the lines, and thirteen numbers. */
export interface TopRound {
  ys: Float64Array;
  lines: Int32Array;
  /** 1 for tops of joined writing, else 0. */
  joined: Float64Array;
  offsets: Float64Array;
  numbers: readonly number[];
}

/** Two sums of each kind, of every second top; for each line its two sums; products of likelihoods. */
export interface TopSums {
  sums: Float64Array;
  own: Float64Array;
  products: Float64Array;
}

/** `topSums` of page-model.ts; null where there is no WebAssembly. */
export function fastTopSums({ ys, lines, joined, offsets, numbers }: TopRound): TopSums | null {
  const count = ys.length;
  const even = count + (count % LANES);
  const products = LANES * Math.ceil(count / PRODUCT);
  const sizes = [even, even / 2, even, offsets.length, 2 * offsets.length, 16, products, numbers.length];
  const lent = room(sizes.map((size) => FLOAT * size));
  if (!lent) return null;
  const { at, buffer, exports } = lent;
  const floats = (part: number): Float64Array => new Float64Array(buffer, at[part], sizes[part]);
  const [given, result] = [floats(0), floats(4).fill(0)];
  given.set(ys);
  new Int32Array(buffer, at[1], count).set(lines);
  if (even > count) {
    // The last one twice: it counts once.
    given[count] = ys[count - 1]!;
    new Int32Array(buffer, at[1], even)[count] = lines[count - 1]!;
  }
  floats(2).set(joined);
  floats(3).set(offsets);
  floats(7).set(numbers);
  exports.topSums(at[0]!, at[1]!, count, ...at.slice(2));
  return { sums: floats(5), own: result, products: floats(6) };
}
