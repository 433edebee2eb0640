import type { Hole } from '../image/holes.ts';
import { lettersOf } from './letters.ts';
import type { Layout } from '../lines/page-layout.ts';
import { median } from '../../statistics/order-statistics.ts';
import { usualWidth } from './letter-kinds.ts';

/** This many letters of a kind tell this hand's width; else the usual one is scaled. */
const LEAST = 2;

/** Widths of this hand's letters in x-heights, learned from a first alignment with usual widths. */
export function handWidths(
  layout: Layout,
  texts: readonly (readonly (string | null)[])[],
  holesByBlob: ReadonlyMap<number, readonly Hole[]>,
): (char: string) => number {
  const seen = new Map<string, number[]>();
  const ratios: number[] = [];
  layout.lines.forEach((line, i) =>
    layout.words[i]!.forEach((word, k) => {
      const text = texts[i]?.[k] ?? null;
      if (text === null || text.includes(' ')) return;
      const size = layout.sizeOf(i, word);
      for (const letter of lettersOf(word, line, text, size, holesByBlob, layout.map, layout.frame)) {
        if (letter.char === null) continue;
        const width = (letter.u1 - letter.u0) / size;
        ratios.push(width / usualWidth(letter.char));
        const list = seen.get(letter.char) ?? [];
        list.push(width);
        seen.set(letter.char, list);
      }
    }),
  );
  const scale = median(ratios) ?? 1;
  const known = new Map<string, number>();
  for (const [char, list] of seen) if (list.length >= LEAST) known.set(char, median(list)!);
  return (char) => known.get(char) ?? usualWidth(char) * scale;
}
