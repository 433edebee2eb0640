import type { Baseline } from './baseline-fit.ts';
import type { Blob } from '../pieces/ink-pieces.ts';
import type { LetterTop, SizeTrend } from './letter-tops.ts';
import type { Trace } from './trace.ts';

/** A line of writing while it is being read. Lengths in page pixels. */
export interface LineWork {
  trace: Trace;
  baseline: Baseline;
  trend: SizeTrend;
  /** Tops of its letters. */
  tops: LetterTop[];
  /** Blobs of the line, from left to right. */
  blobs: LineBlob[];
}

/** A blob as part of a line: its extent along the baseline. */
export interface LineBlob {
  blob: Blob;
  index: number;
  from: number;
  to: number;
}

/** Blobs wider than this many x-heights hold several letters: each of their tops is looked at. */
export const JOINED_WIDTH = 1.6;
/** Ink lower than this many x-heights is a dot, a comma or a bar; narrower than this a bare stem. */
export const FLAT = 0.4;
