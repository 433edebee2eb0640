/**
 * All ways of parting a line's pieces of ink into words: the best one, and the chance of each gap over all of them.
 * Most stretches add nothing: they are told by their rough density, and the exact one is taken of the others only.
 */
import { density, ROUGH, roughDensities } from './word-stretches.ts';
import type { Stretches } from './word-stretches.ts';

/** What is smaller by this (ln) than what it is added to leaves the sum as it is, to the last digit. */
const NOTHING = 45;
/** The same told roughly; some hundreds of them together add nothing either. */
const ROUGHLY_NOTHING = NOTHING + 7 + 2 * ROUGH;

/** Pieces of ink from which a word may reach to before piece `end`: from the first of these on. */
function firstStarts({ first }: Stretches): Int32Array {
  const n = first.length - 1;
  const starts = new Int32Array(n + 1).fill(n);
  for (let k = n - 1; k >= 0; k -= 1)
    for (let end = k + first[k + 1]! - first[k]!; end > k && starts[end]! > k; end -= 1) starts[end] = k;
  return starts;
}

/**
 * The best way: 1 for each gap that parts words, and its score.
 * @param odds log odds of each gap for parting words
 * @param width mean of ln(width of a word)
 */
export function bestWay(
  odds: readonly number[],
  stretches: Stretches,
  width: number,
): { cuts: number[]; score: number } {
  const { first, lnWidths } = stretches;
  const n = first.length - 1;
  const rough = roughDensities(stretches, width);
  const starts = firstStarts(stretches);
  /** Score of the best way before each piece, with the cut before it. */
  const before = new Float64Array(n + 1);
  const back = new Int32Array(n + 1);
  let best = 0;
  for (let end = 1; end <= n; end += 1) {
    let highest = -Infinity;
    for (let k = starts[end]!; k < end; k += 1) {
      const i = first[k]! + end - 1 - k;
      if (i < first[k + 1]! && before[k]! + rough[i]! > highest) highest = before[k]! + rough[i]!;
    }
    best = -Infinity;
    for (let k = starts[end]!; k < end; k += 1) {
      const i = first[k]! + end - 1 - k;
      if (i >= first[k + 1]! || before[k]! + rough[i]! < highest - 2 * ROUGH) continue;
      const score = before[k]! + density(lnWidths[i]!, width);
      if (score > best) [best, back[end]] = [score, k];
    }
    before[end] = best + (odds[end - 1] ?? 0);
  }
  const cuts = odds.map(() => 0);
  for (let k = back[n]!; k > 0; k = back[k]!) cuts[k - 1] = 1;
  return { cuts, score: best };
}

/** Chance of each gap to part words, over all ways (forward and backward). Parameters as above. */
export function chancesOf(odds: readonly number[], stretches: Stretches, width: number): number[] {
  const { first, lnWidths } = stretches;
  const n = first.length - 1;
  const rough = roughDensities(stretches, width);
  const starts = firstStarts(stretches);
  /** Density of each stretch with the cut before it; Infinity where it was not asked for yet. */
  const exact = new Float64Array(rough.length).fill(Infinity);
  for (let k = 1; k < n; k += 1) for (let i = first[k]!; i < first[k + 1]!; i += 1) rough[i] = rough[i]! + odds[k - 1]!;
  const asked = (i: number, k: number): number => {
    if (exact[i] === Infinity) exact[i] = density(lnWidths[i]!, width) + (k > 0 ? odds[k - 1]! : 0);
    return exact[i]!;
  };
  const forward = new Float64Array(n + 1);
  const backward = new Float64Array(n + 1);
  for (let end = 1; end <= n; end += 1) {
    let highest = -Infinity;
    for (let k = starts[end]!; k < end; k += 1) {
      const i = first[k]! + end - 1 - k;
      if (i < first[k + 1]! && forward[k]! + rough[i]! > highest) highest = forward[k]! + rough[i]!;
    }
    let sum = -Infinity;
    for (let k = starts[end]!; k < end; k += 1) {
      const i = first[k]! + end - 1 - k;
      if (i < first[k + 1]! && forward[k]! + rough[i]! > highest - ROUGHLY_NOTHING)
        sum = lnSum(sum, forward[k]! + asked(i, k));
    }
    forward[end] = sum;
  }
  for (let k = n - 1; k >= 0; k -= 1) {
    const shift = k + 1 - first[k]!;
    let highest = -Infinity;
    for (let i = first[k]!; i < first[k + 1]!; i += 1)
      if (backward[i + shift]! + rough[i]! > highest) highest = backward[i + shift]! + rough[i]!;
    let sum = -Infinity;
    for (let i = first[k]!; i < first[k + 1]!; i += 1)
      if (backward[i + shift]! + rough[i]! > highest - ROUGHLY_NOTHING)
        sum = lnSum(sum, backward[i + shift]! + asked(i, k));
    backward[k] = sum;
  }
  const all = forward[n]!;
  return odds.map((_, k) => Math.exp(Math.min(0, forward[k + 1]! + backward[k + 1]! - all)));
}

function lnSum(a: number, b: number): number {
  const [high, low] = a > b ? [a, b] : [b, a];
  // Near 0 a sum takes up even less.
  if (high - low > NOTHING && Math.abs(high) > 1) return high;
  return high + Math.log1p(Math.exp(low - high));
}
