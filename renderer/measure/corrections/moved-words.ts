import { lineSize, sized } from '../lines/line-reading.ts';
import { extentAlong } from '../pieces/run-map.ts';
import type { LineBlob, LineWork } from '../lines/line-work.ts';
import type { Layout } from '../lines/page-layout.ts';
import { withLines } from '../lines/page-layout.ts';
import type { WordWork } from '../letters/word-groups.ts';
import { wordsOf } from '../letters/spacing.ts';
import type { BoxMm } from '../types.ts';
import type { Correction } from '../measure-options.ts';
import { lineAt, spotOf } from './find-target.ts';

/** Ink this far outside the box of a word is its own still, mm: another method may read the box a little tighter. */
const AROUND_MM = 0.3;

/** Takes words out of the lines they were read in. They join their new lines after the text is laid (`withMoved`). */
export function lifted(layout: Layout, corrections: readonly Correction[]): Layout {
  let lines = layout.lines;
  const moves: { blobs: LineBlob[]; rest: LineBlob[]; to: Correction & { kind: 'move-to-line' } }[] = [];
  for (const to of corrections) {
    if (to.kind !== 'move-to-line') continue;
    const from = lineAt({ ...layout, lines }, spotOf(layout, to.at));
    if (from < 0) continue;
    const line = lines[from]!;
    const blobs = line.blobs.filter((blob) => isIn(layout, blob, to.word));
    const target = lineAt({ ...layout, lines }, spotOf(layout, to.line));
    if (blobs.length === 0 || target < 0 || target === from) continue;
    const rest = line.blobs.filter((blob) => !blobs.includes(blob));
    lines = lines.flatMap((other, i) =>
      i !== from ? [other] : rest.length === 0 ? [] : [sized({ ...line, blobs: rest }, layout.lists, lineSize(line))],
    );
    moves.push({ blobs, rest, to });
  }
  if (moves.length === 0) return layout;
  const without = { ...withLines(layout, lines), ...wordsOf(lines, layout.map, layout.frame, layout.strokePx) };
  const moved = moves.flatMap(({ blobs, rest, to }) => {
    const line = lineAt(without, spotOf(without, to.line));
    const from = lines.findIndex((other) => other.blobs.some(({ index }) => index === rest[0]?.index));
    const hole = from < 0 ? null : { line: from, at: Math.min(...blobs.map((b) => b.from)) };
    return line < 0 ? [] : [{ line, word: wordOf(blobs, without, lines[line]!), hole }];
  });
  return { ...without, moved };
}

/** The layout with moved words in their places, and the texts of all words beside them. */
export function withMoved(
  layout: Layout,
  texts: (string | null)[][] | null,
): { layout: Layout; texts: (string | null)[][] | null } {
  if (layout.moved.length === 0) return { layout, texts };
  const words = layout.words.map((own) => [...own]);
  const all = texts?.map((own) => [...own]) ?? null;
  for (const { hole } of layout.moved) {
    const after = hole ? words[hole.line]!.findIndex((word) => word.from > hole.at) : -1;
    if (after > 0) words[hole!.line]![after] = { ...words[hole!.line]![after]!, gapBefore: null };
  }
  for (const { line, word } of layout.moved) {
    const middle = (word.from + word.to) / 2;
    const after = words[line]!.findIndex((other) => (other.from + other.to) / 2 > middle);
    const at = after < 0 ? words[line]!.length : after;
    words[line]!.splice(at, 0, word);
    all?.[line]!.splice(at, 0, null);
  }
  return { layout: { ...layout, words }, texts: all };
}

function isIn({ frame }: Layout, { blob }: LineBlob, box: BoxMm): boolean {
  const [u, v] = [(blob.u0 + blob.u1) / 2 / frame.pxPerMm, (blob.v0 + blob.v1) / 2 / frame.pxPerMm];
  return (
    u >= box.xMm - AROUND_MM &&
    u <= box.xMm + box.widthMm + AROUND_MM &&
    v >= box.yMm - AROUND_MM &&
    v <= box.yMm + box.heightMm + AROUND_MM
  );
}

/** One word of some ink, with its extent along the line that it joins. */
function wordOf(blobs: readonly LineBlob[], { frame, map }: Layout, line: LineWork): WordWork {
  const direction = frame.angle - Math.atan(line.baseline.straight.slope);
  const own = blobs.map((b) => ({ ...b, ...extentAlong(b.blob, map, direction, frame.originX, frame.originY) }));
  const [from, to] = [Math.min(...own.map((b) => b.from)), Math.max(...own.map((b) => b.to))];
  return { groups: [{ blobs: own, from, to }], from, to, gapBefore: null, moved: true };
}
