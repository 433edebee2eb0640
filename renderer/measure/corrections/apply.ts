import { wordsOf } from '../letters/spacing.ts';
import { DECIDED } from '../letters/text-path.ts';
import type { WordWork } from '../letters/word-groups.ts';
import { withLines } from '../lines/page-layout.ts';
import type { Layout } from '../lines/page-layout.ts';
import type { Correction } from '../measure-options.ts';
import { correctLines } from './line-corrections.ts';
import { lifted } from './moved-words.ts';
import { correctWords } from './word-corrections.ts';

/** The layout as the therapist corrected it: lines first, then words. What points nowhere changes nothing. */
export function corrected(layout: Layout, corrections: readonly Correction[]): Layout {
  if (corrections.length === 0 || layout.lines.length === 0) return layout;
  const lines = correctLines(layout, corrections);
  const straight =
    lines === layout.lines
      ? layout
      : { ...withLines(layout, lines), ...wordsOf(lines, layout.map, layout.frame, layout.strokePx) };
  const relined = lifted(straight, corrections);
  const words = correctWords(relined, corrections);
  return words === relined.words ? relined : { ...relined, words, odds: decided(relined, words) };
}

/** Odds of the gaps, with those that were decided by hand beyond doubt. */
function decided(before: Layout, words: readonly WordWork[][]): number[][] {
  return before.odds.map((odds, i) => {
    const { groups, letters } = before.spacings[i]!;
    const wordOf = (list: readonly WordWork[], k: number): number =>
      list.findIndex((word) => word.groups.includes(groups[letters[k]!]!));
    return odds.map((value, k) => {
      const parts = (list: readonly WordWork[]): boolean => wordOf(list, k) !== wordOf(list, k + 1);
      const [was, is] = [parts(before.words[i]!), parts(words[i]!)];
      return was === is ? value : is ? DECIDED : -DECIDED;
    });
  });
}
