/** The stretches of a line that may be words, and how likely each is by its width. Lengths in x-heights. */

/** ln(width of a word): expected mean, how far hands differ in it, spread. */
export const WORD = { mean: Math.log(3.2), between: 0.3, sd: 0.68 } as const;
/** Words of one letter or figure: their share (from memory: 3 to 6 % of English), their width to that of the others, spread. */
const SHORT = { share: 0.02, mean: Math.log(0.15), sd: 0.9 } as const;
const LN_ROOT_2_PI = 0.5 * Math.log(2 * Math.PI);
/** Words are no wider than this. */
const WIDEST = 30;

/** All stretches of a line that may be a word: those from piece k lie from `first[k]` to `first[k + 1]`, shortest first. */
export interface Stretches {
  first: Int32Array;
  /** ln(width) of each. */
  lnWidths: Float64Array;
}

/** @param line its pieces of ink from left to right */
export function stretchesOf(line: { from: readonly number[]; to: readonly number[] }): Stretches {
  const n = line.from.length;
  const first = new Int32Array(n + 1);
  const widths: number[] = [];
  for (let k = 0; k < n; k += 1) {
    let end = -Infinity;
    for (let j = k; j < n; j += 1) {
      end = Math.max(end, line.to[j]!);
      const width = end - line.from[k]!;
      if (width > WIDEST && j > k) break;
      widths.push(Math.log(Math.max(0.05, width)));
    }
    first[k + 1] = widths.length;
  }
  return { first, lnWidths: Float64Array.from(widths) };
}

/** Log density of a word's width per x-height, without the share of the x-heights. @param off ln(width) from its mean */
function shape(off: number): number {
  const short = (SHORT.share / SHORT.sd) * Math.exp(-0.5 * ((off - SHORT.mean) / SHORT.sd) ** 2);
  const usual = ((1 - SHORT.share) / WORD.sd) * Math.exp(-0.5 * (off / WORD.sd) ** 2);
  return Math.log(short + usual + 1e-12) - LN_ROOT_2_PI;
}

/** Log density of a word's width per x-height. @param mean of ln(width of a word) */
export function density(lnWidth: number, mean: number): number {
  return shape(lnWidth - mean) - lnWidth;
}

/** The shape at steps of ln(width): most stretches are so much worse than others that this tells it. */
const STEPS = 128;
const REACH = 7;
const shapes = Float64Array.from({ length: 2 * REACH * STEPS + 1 }, (_, i) => shape(i / STEPS - REACH));

/** `roughDensities` are off by no more than this. */
export const ROUGH = shapes.reduce((most, value, i) => Math.max(most, Math.abs(value - (shapes[i - 1] ?? value))), 0);

/** The densities of all stretches, nearly. */
export function roughDensities({ lnWidths }: Stretches, mean: number): Float64Array {
  const out = new Float64Array(lnWidths.length);
  for (let i = 0; i < out.length; i += 1) {
    const x = lnWidths[i]!;
    const step = (x - mean + REACH) * STEPS + 0.5;
    out[i] = step >= 0 && step < shapes.length ? shapes[step | 0]! - x : density(x, mean);
  }
  return out;
}
