import { markKey } from '../corrections/letter-marks.ts';
import type { Marks } from '../corrections/letter-marks.ts';
import type { Hole } from '../image/holes.ts';
import { SOLID } from '../image/printed-rulings.ts';
import type { Ink } from '../image/ink.ts';
import { extentOf } from '../pieces/ink-pieces.ts';
import { boxMm, pointMm, xOf, yOf } from '../lines/frame.ts';
import { sizeAt, X_HEIGHT_BAND } from '../lines/letter-tops.ts';
import type { LetterTop } from '../lines/letter-tops.ts';
import { lettersOf } from './letters.ts';
import type { LetterWork } from './letters.ts';
import { lineSize } from '../lines/line-reading.ts';
import type { LineWork } from '../lines/line-work.ts';
import { strokesOf } from './pen-strokes.ts';
import { traceAt } from '../lines/trace.ts';
import { gapsOf } from './word-groups.ts';
import type { Group, WordWork } from './word-groups.ts';
import type { Layout } from '../lines/page-layout.ts';
import { median } from '../../statistics/order-statistics.ts';
import { ASCENDING, CLOSING, DESCENDING, SMALL, zoneOf } from './letter-kinds.ts';
import type { LetterResult, LineResult, PointMm, WordResult } from '../types.ts';

/** Tops from this many x-heights on are ascenders; between lie t and capitals of some hands. */
const ASCENDER = 1.3;
/** Bottoms from this many x-heights below the baseline on are descenders. */
const DESCENDER = 0.27;
/** What reaches further than this belongs to a flourish or to another line. */
const FARTHEST = 3.2;
/** Upright strokes of this many x-heights tell the slant (common practice: at least 0.7). */
const LONG_STROKE = 0.7;

/** Letters and tops that look alike, by numbers of the page, and which tops are those of small letters. */
export interface Kinds {
  letters: ReadonlyMap<Group, number>;
  tops: ReadonlyMap<LetterTop, number>;
  /** Tops of small letters by line, from left to right. */
  small: readonly (readonly LetterTop[])[];
}

/** One line with its words, in mm. */
export function readLine(
  layout: Layout,
  ink: Ink,
  index: number,
  texts: readonly (string | null)[] | null,
  holesByBlob: ReadonlyMap<number, readonly Hole[]>,
  marks: Marks,
  kinds: Kinds,
  widths?: (char: string) => number,
): LineResult {
  const line = layout.lines[index]!;
  const { frame } = layout;
  const read = layout.words[index]!.map((word, k) => {
    const result = readWord(layout, index, word, texts?.[k] ?? null, holesByBlob, marks.letters, kinds, widths);
    return word.moved ? aside(result) : result;
  });
  const words = read.map((word, k) => ({ ...word, excluded: marks.excluded.has(markKey(index, k)) }));
  const { u0, u1, v0, v1 } = extentOf(line.blobs);
  const { curve } = line.baseline;
  const steps = Math.max(2, Math.ceil((u1 - u0) / curve.step));
  return {
    box: boxMm(frame, u0, v0, u1, v1),
    xHeightMm: median(words.filter((word) => !word.excluded).flatMap((word) => word.xHeightsMm)),
    baselineAngleDeg: (-Math.atan(line.baseline.straight.slope) * 180) / Math.PI,
    baselineRmsMm: line.baseline.rms / frame.pxPerMm,
    words,
    baseline: Array.from({ length: steps + 1 }, (_, k) => {
      const u = u0 + ((u1 - u0) * k) / steps;
      return pointMm(frame, u, traceAt(curve, u));
    }),
    startMm: u0 / frame.pxPerMm,
    rulingOffsetMm: rulingOffset(line, ink, layout),
  };
}

/** A word that stands above or below its line: it counts, but heights from that line's baseline mean nothing. */
function aside(word: WordResult): WordResult {
  const none = { xHeightsMm: [], unevenMm: [], ascendersMm: [], descendersMm: [], letterGapsMm: [], letters: [] };
  return { ...word, ...none, xHeightMm: null, moved: true };
}

function readWord(
  layout: Layout,
  index: number,
  word: WordWork,
  text: string | null,
  holesByBlob: ReadonlyMap<number, readonly Hole[]>,
  struck: readonly PointMm[],
  kinds: Kinds,
  widths?: (char: string) => number,
): WordResult {
  const { frame, map } = layout;
  const line = layout.lines[index]!;
  const px = frame.pxPerMm;
  const blobs = word.groups.flatMap((group) => group.blobs);
  const { u0, u1, v0, v1 } = extentOf(blobs);
  const size = sizeAt(line.trend, (u0 + u1) / 2);
  const single = text !== null && !text.includes(' ') ? text : null;
  const letters = lettersOf(word, line, single, size, holesByBlob, map, frame, widths);
  const out = letters.map((letter) => struck.some((point) => holds(letter, point, px)));
  const isOut = (u: number): boolean => letters.some((letter, k) => out[k] && u >= letter.u0 && u <= letter.u1);
  const own = line.tops.filter((top) => top.u >= u0 - 1 && top.u <= u1 + 1 && !isOut(top.u)).sort((a, b) => a.u - b.u);
  const known = single !== null;
  const topsOf = (kinds: string): number[] =>
    letters.filter((l, k) => !out[k] && l.char !== null && kinds.includes(l.char)).map((l) => l.top);
  const smallTops = own.filter(({ height: h }) => h > 0 && Math.abs(Math.log(h / size)) < X_HEIGHT_BAND);
  const small = known ? topsOf(SMALL).filter((h) => h > 0) : smallTops.map((h) => h.height);
  const uneven = kinds.small[index]!.filter(({ u }) => u >= u0 - 1 && u <= u1 + 1 && !isOut(u));
  const tall = (known ? topsOf(ASCENDING) : own.map((h) => h.height)).filter(
    (h) => h > ASCENDER * size && h < FARTHEST * size,
  );
  const bottoms = blobs.flatMap((b) => layout.lists[b.index]!).filter((e) => e.kind === 'bottom' && !isOut(e.u));
  const hanging = (
    known
      ? letters.filter((l, k) => !out[k] && l.char !== null && DESCENDING.includes(l.char)).map((l) => -l.bottom)
      : bottoms.map((e) => e.v - traceAt(line.baseline.curve, e.u))
  ).filter((d) => d > DESCENDER * size && d < FARTHEST * size);
  const direction = frame.angle - Math.atan(line.baseline.straight.slope);
  const strokes = blobs.flatMap(({ blob }) => strokesOf(blob, map, layout.strokePx, LONG_STROKE * size));
  const slants = strokes.map((s) => ((s.slant + direction) * 180) / Math.PI);
  const strokeWidths = strokes.map((s) => s.width / px);
  const xHeight = median(small);
  return {
    box: boxMm(frame, u0, v0, u1, v1),
    xHeightMm: xHeight === null ? null : xHeight / px,
    gapBeforeMm: word.gapBefore === null ? null : word.gapBefore / px,
    text,
    sizeMm: size / px,
    xHeightsMm: small.map((h) => h / px),
    unevenMm: uneven.map((top) => top.height / px),
    ...(known || kinds.tops.size === 0 ? {} : { headKinds: smallTops.map((top) => kinds.tops.get(top) ?? null) }),
    ascendersMm: tall.map((h) => h / px),
    descendersMm: hanging.map((d) => d / px),
    letterGapsMm: gapsOf(word.groups.filter((g) => isLetter(g.from, g.to, letters, size))).map((g) => g / px),
    slantDeg: median(slants),
    strokeWidthMm: median(strokeWidths),
    slantsDeg: slants,
    strokeWidthsMm: strokeWidths,
    loops: blobs.reduce((sum, { blob }) => sum + (holesByBlob.get(blob.component)?.length ?? 0), 0),
    letterCount: letters.reduce((sum, letter) => sum + letter.count, 0),
    letters: letters.map((letter, k) => ({
      ...letterResult(letter, size, layout),
      shape: letter.char === null ? (kinds.letters.get(word.groups[k]!) ?? null) : null,
      excluded: out[k]!,
    })),
    excluded: false,
    ...(word.doubt ? { doubt: true as const } : {}),
  };
}

/** Whether a point marked by hand lies on a letter. */
function holds(letter: LetterWork, point: PointMm, px: number): boolean {
  const [u, v] = [point.xMm * px, point.yMm * px];
  return u >= letter.u0 && u <= letter.u1 && v >= letter.v0 && v <= letter.v1;
}

/** Points and commas are no letters: their gaps are not letter gaps. */
function isLetter(from: number, to: number, letters: readonly LetterWork[], size: number): boolean {
  let seen = false;
  for (const { u0, u1, top } of letters) {
    const middle = (u0 + u1) / 2;
    if (middle < from - 1 || middle > to + 1) continue;
    if (top > 0.55 * size) return true;
    seen = true;
  }
  return !seen;
}

function letterResult(letter: LetterWork, size: number, layout: Layout): LetterResult {
  const px = layout.frame.pxPerMm;
  const seen =
    letter.top > ASCENDER * size ? 'ascender' : Math.abs(Math.log(letter.top / size)) < X_HEIGHT_BAND ? 'x' : null;
  const hangs = letter.bottom < -DESCENDER * size;
  return {
    box: boxMm(layout.frame, letter.u0, letter.v0, letter.u1, letter.v1),
    text: letter.char,
    topMm: letter.top / px,
    bottomMm: -letter.bottom / px,
    zone: letter.char !== null ? zoneOf(letter.char) : hangs ? (seen === 'ascender' ? 'both' : 'descender') : seen,
    shape: null,
    loops: letter.loops,
    closureExpected: letter.char === null ? null : CLOSING.includes(letter.char),
    excluded: false,
  };
}

/** Mean distance of the bottoms above the printed line they stand on, mm; null without one nearby. */
function rulingOffset(line: LineWork, ink: Ink, layout: Layout): number | null {
  const { frame } = layout;
  const solid = ink.rulings.across.filter((ruling) => ruling.filled >= SOLID);
  if (solid.length === 0 || line.baseline.bottoms.length === 0) return null;
  const reach = 1.2 * lineSize(line);
  let best: number | null = null;
  for (const ruling of solid) {
    let sum = 0;
    for (const bottom of line.baseline.bottoms) {
      const x = xOf(frame, bottom.u, bottom.v);
      sum += ruling.intercept + ruling.slope * x - yOf(frame, bottom.u, bottom.v);
    }
    const mean = sum / line.baseline.bottoms.length;
    if (Math.abs(mean) < reach && (best === null || Math.abs(mean) < Math.abs(best))) best = mean;
  }
  return best === null ? null : best / frame.pxPerMm;
}
