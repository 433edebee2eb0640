import type { WordWork } from '../letters/word-groups.ts';
import type { Layout } from '../lines/page-layout.ts';
import type { Correction } from '../measure-options.ts';
import { lineAt, spotOf, wordAt } from './find-target.ts';

/** Applies what was corrected about words: split and joined. Answers the words of all lines. */
export function correctWords(layout: Layout, corrections: readonly Correction[]): WordWork[][] {
  let words = layout.words;
  for (const correction of corrections) {
    if (correction.kind !== 'split-word' && correction.kind !== 'join-words') continue;
    const now = { ...layout, words };
    const spot = spotOf(now, correction.at);
    const line = lineAt(now, spot);
    if (line < 0) continue;
    const own =
      correction.kind === 'split-word'
        ? splitWord(words[line]!, wordAt(now, line, spot), spot.along(now.lines[line]!))
        : joinWords(words[line]!, wordAt(now, line, spot), wordAt(now, line, spotOf(now, correction.with)));
    words = words.map((list, i) => (i === line ? own : list));
  }
  return words;
}

function splitWord(words: readonly WordWork[], k: number, at: number): WordWork[] {
  const word = words[k];
  if (!word) return [...words];
  const left = word.groups.filter((group) => (group.from + group.to) / 2 < at);
  const right = word.groups.filter((group) => (group.from + group.to) / 2 >= at);
  if (left.length === 0 || right.length === 0) return [...words];
  const first = wordOf(left, word.gapBefore);
  const second = wordOf(right, Math.min(...right.map((g) => g.from)) - first.to);
  return [...words.slice(0, k), first, second, ...words.slice(k + 1)];
}

function joinWords(words: readonly WordWork[], a: number, b: number): WordWork[] {
  const [from, to] = [Math.min(a, b), Math.max(a, b)];
  if (from < 0 || from === to) return [...words];
  const joined = wordOf(
    words.slice(from, to + 1).flatMap((word) => word.groups),
    words[from]!.gapBefore,
  );
  return [...words.slice(0, from), joined, ...words.slice(to + 1)];
}

function wordOf(groups: WordWork['groups'], gapBefore: number | null): WordWork {
  return {
    groups,
    from: Math.min(...groups.map((g) => g.from)),
    to: Math.max(...groups.map((g) => g.to)),
    gapBefore,
  };
}
