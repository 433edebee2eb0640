import { wordsOf } from '../letters/word-groups.ts';
import { withLines } from '../lines/page-layout.ts';
import type { Layout } from '../lines/page-layout.ts';
import type { Correction } from '../types.ts';
import { correctLines } from './line-corrections.ts';
import { correctWords } from './word-corrections.ts';

/** The layout as the therapist corrected it: lines first, then words. What points nowhere changes nothing. */
export function corrected(layout: Layout, corrections: readonly Correction[]): Layout {
  if (corrections.length === 0 || layout.lines.length === 0) return layout;
  const lines = correctLines(layout, corrections);
  const relined = lines === layout.lines ? layout : { ...withLines(layout, lines), ...wordsOf(lines) };
  return { ...relined, words: correctWords(relined, corrections) };
}
