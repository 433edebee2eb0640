import type { Layout } from '../lines/page-layout.ts';
import type { PointMm } from '../types.ts';
import type { Correction } from '../measure-options.ts';
import { lineAt, spotOf, wordAt } from './find-target.ts';

/** What was marked by hand, by line and word. */
export interface Marks {
  /** `line:word` of words that do not count. */
  excluded: Set<string>;
  /** Texts set by hand. */
  texts: Map<string, string>;
  /** Points of letters that cannot be read or were crossed out, page mm. */
  letters: PointMm[];
}

export const markKey = (line: number, word: number): string => `${line}:${word}`;

/** Finds the words and letters that corrections point at in this layout. */
export function marksOf(layout: Layout, corrections: readonly Correction[]): Marks {
  const marks: Marks = { excluded: new Set(), texts: new Map(), letters: [] };
  for (const correction of corrections) {
    if (correction.kind === 'letter-unreadable' || correction.kind === 'letter-crossed-out') {
      marks.letters.push(correction.at);
      continue;
    }
    if (correction.kind !== 'exclude-word' && correction.kind !== 'set-text') continue;
    const spot = spotOf(layout, correction.at);
    const line = lineAt(layout, spot);
    const word = line < 0 ? -1 : wordAt(layout, line, spot);
    if (word < 0) continue;
    if (correction.kind === 'exclude-word') marks.excluded.add(markKey(line, word));
    else marks.texts.set(markKey(line, word), correction.text.trim());
  }
  return marks;
}
