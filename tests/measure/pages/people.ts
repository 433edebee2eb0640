/** What people do and fonts do not: uneven letters, three kinds of gap, slips and their mending. */
import type { Chain } from '../../../build/letters/glyph.ts';
import type { Random } from '../../../build/letters/random.ts';
import type { People } from './types.ts';

/** Words that get forgotten and are put in later. */
export const INSERTED = ['the', 'little', 'not', 'with', 'and', 'very'] as const;
/** Added before the logarithm of a gap: what touches has one too. */
const SHIFT = 0.1;
/** A point or comma set apart, and a gap within a parted word, x-heights: between inner and word gaps. */
const MARK_APART = { least: 0.5, most: 1.3 } as const;
const PARTED = { least: 0.7, most: 1.5 } as const;
const RADIANS = Math.PI / 180;

/** Share of the variation of height that all letters of a word have in common, and of height that goes with width. */
const OF_WORD = 0.3;
const WITH_WIDTH = 0.5;

/**
 * Height and width (factors), foot above the baseline (x-heights) and shear of one letter beside those of its word.
 * @param ofWord how far the whole word is off, in standard deviations
 */
export function letterOfPerson(
  { letterCv, feetXh, letterSlantSdDeg }: People,
  random: Random,
  ofWord: number,
): { size: number; width: number; footXh: number; shear: number } {
  const sd = Math.sqrt(Math.log(1 + letterCv ** 2));
  const ln = sd * (Math.sqrt(OF_WORD) * ofWord + Math.sqrt(1 - OF_WORD) * random.normal());
  return {
    size: Math.exp(ln),
    width: Math.exp(WITH_WIDTH * ln),
    footXh: feetXh * random.normal(),
    shear: Math.tan(letterSlantSdDeg * random.normal() * RADIANS),
  };
}

/** Space before a letter of a word, x-heights; negative where it touches. */
export function gapOfPerson(
  { inner, touching, marksApart }: People,
  random: Random,
  { char, isParted }: { char: string; isParted: boolean },
): number {
  if (/[.,]/.test(char))
    return random.next() < marksApart ? random.between(MARK_APART.least, MARK_APART.most) : random.between(0.05, 0.25);
  if (isParted) return random.between(PARTED.least, PARTED.most);
  if (random.next() < touching) return -random.between(0.02, 0.12);
  return Math.max(0.03, Math.exp(inner.mean + inner.sd * random.normal()) - SHIFT);
}

/** Space after a word, x-heights. @param spacing of its line, ln */
export function wordGapOfPerson({ between }: People, random: Random, spacing: number): number {
  return Math.max(0.25, Math.exp(between.mean + spacing + between.sd * random.normal()) - SHIFT);
}

/** Which words of a line are crossed out. */
export function struckWords({ crossedOut }: People, random: Random, lines: number, words: number): number[] {
  return Array.from({ length: words }, (_, i) => i).filter(() => random.next() < crossedOut / (lines * words));
}

/** A zigzag through a word, mm from its left end on the baseline. */
export function scribble(widthMm: number, xHeightMm: number, random: Random): Chain {
  const turns = Math.max(4, Math.round(widthMm / xHeightMm / 0.35));
  const points: number[] = [];
  for (let i = 0; i <= turns; i += 1)
    points.push((widthMm * i) / turns, xHeightMm * (i % 2 ? random.between(0.75, 1.1) : random.between(-0.1, 0.25)));
  return Float64Array.from(points);
}

/** A caret under the line, mm from its point. */
export function caret(xHeightMm: number): Chain {
  return Float64Array.from([
    -0.35 * xHeightMm,
    -0.6 * xHeightMm,
    0,
    0.05 * xHeightMm,
    0.35 * xHeightMm,
    -0.6 * xHeightMm,
  ]);
}
