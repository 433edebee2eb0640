import { ERASED } from '../image/contrast.ts';
import { connectedComponents } from '../image/components.ts';
import { inkRuns } from '../image/runs.ts';
import type { Ink } from '../image/ink.ts';
import { xOf, yOf } from '../lines/frame.ts';
import { lineSize } from '../lines/line-reading.ts';
import type { Layout } from '../lines/page-layout.ts';
import type { Correction } from '../measure-options.ts';
import { lineAt, spotOf, wordAt } from './find-target.ts';

/**
 * Cuts joined ink where a word is to be split: a word that is one stroke has no gap to part it by. Takes a slit of ink
 * out of that word alone. Answers null when no split goes through ink.
 */
export function cutInk(ink: Ink, layout: Layout, corrections: readonly Correction[]): Ink | null {
  const { width, height } = ink.runs;
  let bitmap: Uint8Array | null = null;
  for (const correction of corrections) {
    if (correction.kind !== 'split-word') continue;
    const spot = spotOf(layout, correction.at);
    const line = lineAt(layout, spot);
    const word = line < 0 ? undefined : layout.words[line]![wordAt(layout, line, spot)];
    if (!word) continue;
    const at = spot.along(layout.lines[line]!);
    const group = word.groups.find((g) => g.from < at && g.to > at);
    if (!group) continue;
    bitmap ??= ink.bitmap.slice();
    const components = new Set(group.blobs.map((b) => b.blob.component));
    const x = Math.round(xOf(layout.frame, spot.u, spot.v));
    const y = yOf(layout.frame, spot.u, spot.v);
    const reach = 2.5 * lineSize(layout.lines[line]!);
    for (let row = Math.max(0, Math.floor(y - reach)); row < Math.min(height, y + reach); row += 1)
      for (let r = ink.runs.rows[row]!; r < ink.runs.rows[row + 1]!; r += 1) {
        if (!components.has(ink.components.labels[r]!)) continue;
        for (let c = Math.max(x - 1, ink.runs.from[r]!); c < Math.min(x + 1, ink.runs.to[r]!); c += 1)
          bitmap[row * width + c] = ERASED;
      }
  }
  if (!bitmap) return null;
  const runs = inkRuns(bitmap, width, height);
  // Its outlines are drawn beside the lent ones of the page before the cut.
  return { ...ink, bitmap, runs, components: connectedComponents(runs, 1), outliner: null };
}
