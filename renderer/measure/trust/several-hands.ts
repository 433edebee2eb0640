import type { LineResult } from '../types.ts';
import { median } from '../../statistics/order-statistics.ts';

/** Lines above and below the change needed. */
const LEAST_LINES = 3;
/**
 * Least spread of lines of one hand (standard deviation): ln of x-height, degrees of slant, ln of stroke width. On 37
 * pages of two people lines differed by 0.04 to 0.12, 1 to 4 degrees, 0.02 to 0.07.
 */
const SPREADS = [0.09, 3, 0.06] as const;
/** Two of three must differ by so many spreads, or one by twice as many. */
const APART = 4;

/** From normal deviations: standard deviation over median absolute deviation. */
const SD_OF_MAD = 1.4826;

type Looks = readonly (number | null)[];

/**
 * Line (from 0) from which on another hand seems to write: size, slant and stroke change there for good, together.
 * Null where one hand wrote all. Hands that write alike are not told apart.
 */
export function changeOfHand(lines: readonly LineResult[]): number | null {
  const looks = lines.map(looksOf);
  let best: { at: number; rest: number } | null = null;
  for (let at = LEAST_LINES; at + LEAST_LINES <= lines.length; at += 1) {
    const parted = SPREADS.map((least, k) => distance(looks.slice(0, at), looks.slice(at), k, least));
    const [first, second] = parted.map(({ apart }) => apart).sort((a, b) => b - a) as [number, number];
    if (second < APART && first < 2 * APART) continue;
    // Both lines at the change must look like their own side.
    if (parted.some(({ apart, isClean }) => apart >= APART && !isClean)) continue;
    const rest = parted.reduce((sum, each) => sum + each.rest, 0);
    if (!best || rest < best.rest) best = { at, rest };
  }
  return best?.at ?? null;
}

function looksOf({ words, xHeightMm }: LineResult): Looks {
  const width = median(words.flatMap((word) => word.strokeWidthsMm));
  return [
    xHeightMm === null ? null : Math.log(xHeightMm),
    median(words.flatMap((word) => word.slantsDeg)),
    width === null ? null : Math.log(width),
  ];
}

/**
 * How far two groups of lines lie apart in one look, in spreads of a line within its group; `rest` is what remains
 * unlike within the groups: least where they are parted rightly.
 */
function distance(
  above: readonly Looks[],
  below: readonly Looks[],
  k: number,
  least: number,
): { apart: number; rest: number; isClean: boolean } {
  const of = (group: readonly Looks[]): number[] => group.flatMap((looks) => looks[k] ?? []);
  const [a, b] = [of(above), of(below)];
  const [middleA, middleB] = [median(a), median(b)];
  if (middleA === null || middleB === null || Math.min(a.length, b.length) < LEAST_LINES)
    return { apart: 0, rest: 0, isClean: true };
  const off = [...a.map((x) => Math.abs(x - middleA)), ...b.map((x) => Math.abs(x - middleB))];
  return {
    apart: Math.abs(middleA - middleB) / Math.max(least, SD_OF_MAD * median(off)!),
    rest: off.reduce((p, q) => p + q, 0) / least,
    isClean:
      Math.abs(a.at(-1)! - middleA) < Math.abs(a.at(-1)! - middleB) &&
      Math.abs(b[0]! - middleB) < Math.abs(b[0]! - middleA),
  };
}
