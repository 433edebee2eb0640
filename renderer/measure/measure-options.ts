/** What a measurement of a page is told besides its picture. */
import type { Scale, PointMm, BoxMm } from './types.ts';

/**
 * What the therapist corrected by hand. Every correction is anchored at a point of the page in mm (a point of ink, or
 * of the gap), not at an index, so that it survives a re-measure by a newer method.
 */
export type Correction =
  | { kind: 'split-word'; at: PointMm }
  | { kind: 'join-words'; at: PointMm; with: PointMm }
  | { kind: 'split-line'; at: PointMm }
  | { kind: 'join-lines'; at: PointMm; with: PointMm }
  /** The word in this box belongs to the line at that point: an insertion above or below the line. */
  | { kind: 'move-to-line'; at: PointMm; word: BoxMm; line: PointMm }
  | { kind: 'move-baseline'; at: PointMm; left: PointMm; right: PointMm }
  | { kind: 'exclude-word'; at: PointMm }
  | { kind: 'letter-unreadable'; at: PointMm }
  | { kind: 'letter-crossed-out'; at: PointMm }
  | { kind: 'set-text'; at: PointMm; text: string };

export interface MeasureOptions {
  /** Scale of the picture; null when nothing is known (corner marks or paper edges may still give it). */
  scale: Scale | null;
  /** The text that was meant, lines separated by newlines where the line breaks are known. */
  text?: string;
  corrections?: readonly Correction[];
  /** Quarter turns clockwise to give to the picture first, as chosen by the therapist. */
  quarterTurns?: 0 | 1 | 2 | 3;
  /** Known to lie the right way up: letters in boxes stand as regularly below as beside each other. */
  upright?: boolean;
  /** Known distance between the rulings of the paper, mm; a page that contradicts the scale by over 1 % is questioned. */
  rulingMm?: number;
  /** Seed of the bootstrap: the same seed gives the same intervals. */
  seed?: number;
}

/** Told between stages: a plain word for the stage, and how much is done (0 to 1). Throw from it to cancel. */
export type OnProgress = (stage: string, done: number) => void;
