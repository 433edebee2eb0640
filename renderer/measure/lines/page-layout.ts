import type { Ink } from '../image/ink.ts';
import { blobsOf, extentOf } from '../pieces/ink-pieces.ts';
import { inkMap } from '../pieces/run-map.ts';
import type { Blob } from '../pieces/ink-pieces.ts';
import type { InkMap } from '../pieces/run-map.ts';
import { byBlob, extremesOf } from './extremes.ts';
import type { Extreme } from './extremes.ts';
import type { Frame } from './frame.ts';
import { sizeAt } from './letter-tops.ts';
import { lineSize, readLines } from './line-reading.ts';
import type { LineWork } from './line-work.ts';
import { lineTraces } from './line-traces.ts';
import { wordsOf } from '../letters/spacing.ts';
import type { FoundWords } from '../letters/spacing.ts';
import type { MovedWord, WordWork } from '../letters/word-groups.ts';
import { median } from '../../statistics/order-statistics.ts';
import type { GrayImage } from '../types.ts';

/** Lines and words of a page, with the ink they are made of. */
export interface Layout extends FoundWords {
  frame: Frame;
  map: InkMap;
  blobs: Blob[];
  extremes: Extreme[];
  /** The same by blob. */
  lists: Extreme[][];
  lines: LineWork[];
  /** x-height of each line, pixels. */
  sizes: number[];
  /** x-height at a word, pixels. */
  sizeOf(line: number, word: WordWork): number;
  /** First guess of the x-height, pixels; null without letters. */
  roughPx: number | null;
  /** Far too many pieces of ink: no writing. */
  busy: boolean;
  /** Usual thickness of the ink across, pixels. */
  strokePx: number;
  /** Words moved to other lines by hand; they join `words` after the text is laid. */
  moved: MovedWord[];
}

/** A page of writing has up to some 4,000 pieces of ink; more is noise, print raster or a picture. */
const MOST_PIECES = 12_000;
/** Ink smaller than this share of a stroke's square is a speck. */
const SPECK = 0.4;
/** A top or bottom stands out by this share of the stroke's thickness. */
const PROMINENCE = 0.8;
/** Ink at the picture's edge that reaches in no further than this, mm, is a shadow of the lid or a cut printed line. */
const RIM_MM = 1.5;
/** Strokes lower than this many thicknesses are bars and joins. */
const LOW = 2;

/** Reads lines and words out of the ink. */
export function layoutOf(image: GrayImage, ink: Ink, frame: Frame): Layout {
  const strokePx = usualRun(ink);
  const { map, starts } = inkMap(image, ink, strokePx);
  const smallest = Math.max(4, SPECK * strokePx * strokePx);
  if (busy(ink, smallest)) return { ...nowhere(frame, map, strokePx), busy: true };
  const rim = RIM_MM * frame.pxPerMm;
  const blobs = blobsOf(image, ink, frame, map, starts, smallest, rim);
  const extremes = extremesOf(blobs, frame, PROMINENCE * strokePx);
  const empty: Layout = { ...nowhere(frame, map, strokePx), blobs, extremes, lists: byBlob(extremes, blobs.length) };
  const rough = roughXHeight(extremes, strokePx);
  if (rough === null) return empty;
  const traces = lineTraces(blobs, map, frame, rough);
  const lines = readLines(traces, blobs, extremes, empty.lists, map, frame, rough);
  const found = wordsOf(lines, map, frame, strokePx);
  // Ink without a letter in it is no line: specks, dashes, remnants of printed lines.
  const written = lines.filter((_, i) => found.words[i]!.length > 0);
  if (written.length === lines.length) return withLines({ ...empty, roughPx: rough, ...found }, lines);
  return withLines({ ...empty, roughPx: rough, ...wordsOf(written, map, frame, strokePx) }, written);
}

/** A layout with these lines: sizes follow. */
export function withLines(layout: Layout, lines: LineWork[]): Layout {
  const sizeOf = (line: number, word: WordWork): number => {
    const { u0, u1 } = extentOf(word.groups.flatMap((group) => group.blobs));
    return sizeAt(lines[line]!.trend, (u0 + u1) / 2);
  };
  return { ...layout, lines, sizes: lines.map(lineSize), sizeOf };
}

/** A page without lines. */
function nowhere(frame: Frame, map: InkMap, strokePx: number): Layout {
  return {
    frame,
    map,
    blobs: [],
    extremes: [],
    lists: [],
    lines: [],
    words: [],
    sizes: [],
    sizeOf: () => 1,
    spacings: [],
    odds: [],
    expectedWrong: 0,
    shear: 0,
    roughPx: null,
    busy: false,
    strokePx,
    moved: [],
  };
}

function busy(ink: Ink, smallest: number): boolean {
  let count = 0;
  for (let c = 0; c < ink.components.count; c += 1) if (ink.components.area[c]! >= smallest) count += 1;
  return count > MOST_PIECES;
}

/** Median length of the runs, pixels: counted, not sorted. */
function usualRun({ runs }: Ink): number {
  const counts = new Int32Array(runs.width + 1);
  for (let r = 0; r < runs.count; r += 1) counts[runs.to[r]! - runs.from[r]!]! += 1;
  /** The length of the run that comes `place`-th (from 0) by length. */
  const lengthAt = (place: number): number => {
    let seen = 0;
    return counts.findIndex((count) => (seen += count) > place);
  };
  return runs.count === 0 ? 1 : (lengthAt((runs.count - 1) >> 1) + lengthAt(runs.count >> 1)) / 2;
}

/** Median height of the up and down strokes: most of them are an x-height high. Pixels; null without any. */
function roughXHeight(extremes: readonly Extreme[], strokePx: number): number | null {
  const heights: number[] = [];
  let own: Extreme[] = [];
  const close = (): void => {
    own.sort((p, q) => p.u - q.u);
    for (let k = 0; k + 1 < own.length; k += 1) {
      if (own[k]!.kind === own[k + 1]!.kind) continue;
      const height = Math.abs(own[k]!.v - own[k + 1]!.v);
      if (height > LOW * strokePx) heights.push(height);
    }
    own = [];
  };
  extremes.forEach((extreme, i) => {
    if (i > 0 && extremes[i - 1]!.blob !== extreme.blob) close();
    own.push(extreme);
  });
  close();
  return median(heights);
}
