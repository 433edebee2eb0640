import { median } from '../numbers.ts';
import { SMALL } from '../text/letter-kinds.ts';
import type { WordResult } from '../types.ts';
import type { ReadPage } from './measure.ts';
import { wordsIn } from './measure.ts';

/** A letter counts from this many readings on a page; rarer ones say nothing about their own height. */
const LEAST = 2;

/**
 * How much taller each small letter of this hand is than the line's size, as ln: taken off before sizes are compared
 * along a line, so that a line whose letters change from c to e does not look like growing.
 */
export function letterEffects(page: ReadPage): Map<string, number> {
  const ratios = new Map<string, number[]>();
  for (const word of wordsIn(page))
    for (const { char, ln } of smallLetters(word)) {
      const list = ratios.get(char) ?? [];
      list.push(ln - Math.log(word.sizeMm));
      ratios.set(char, list);
    }
  const effects = new Map<string, number>();
  for (const [char, list] of ratios) if (list.length >= LEAST) effects.set(char, median(list)!);
  return effects;
}

/** Small letters of a word with ln of their height in mm, in order; `index` counts all letters of the word. */
export function smallLetters(word: WordResult): { char: string; ln: number; index: number }[] {
  const found: { char: string; ln: number; index: number }[] = [];
  word.letters.forEach((letter, index) => {
    if (letter.excluded || letter.text === null || letter.topMm === null || letter.topMm <= 0) return;
    if (!SMALL.includes(letter.text)) return;
    const ln = Math.log(letter.topMm);
    // A letter half or twice the size of its line was cut or aligned wrongly.
    if (Math.abs(ln - Math.log(word.sizeMm)) < 0.5) found.push({ char: letter.text, ln, index });
  });
  return found;
}
