import type { GrayImage } from '../types.ts';
import { gatherInk, gatherPaper, halfContrast } from './contrast.ts';
import type { Gather, Levels } from './contrast.ts';
import { rims } from '../sheet/corner-mark-search.ts';
import { eraseBand, markBand } from './ruling-erase.ts';
import type { SolidPrints } from './ruling-erase.ts';
import type { Band } from './ruling-bands.ts';
import { rulingVotes } from './ruling-votes.ts';
import type { Votes } from './ruling-votes.ts';
import { inkRuns } from './runs.ts';
import type { Runs } from './runs.ts';
import { sauvola } from './ink-threshold.ts';
import type { Outliner } from './wasm/fast-outlines.ts';

/**
 * The stages that touch every pixel of one picture. They work on one bitmap of ink, in this order; the bitmap and the
 * votes are lent until the stages of the next picture are made.
 */
export interface PixelStages {
  /** First-pass ink: 1 or 0 for each pixel. @param beside work that a second thread may spare the time for */
  threshold(beside?: () => void): Uint8Array;
  /** How much of each quarter of the picture looks like the rim of a corner mark. */
  rims(): number[];
  /** Votes for printed lines. */
  votes(pxPerMm: number): { across: Votes; down: Votes };
  /** Sums of the bitmap as it is now, for the levels of paper and ink. */
  gather(): Gather;
  /** Marks printed lines in the bitmap, and later decides what of them is ink. */
  markBands(bands: readonly Band[]): void;
  eraseBands(bands: readonly Band[], levels: Levels): void;
  /** Second threshold, in place. */
  halfContrast(levels: Levels): void;
  /** The bitmap as it is now, and its runs of ink. */
  bitmap(): Uint8Array;
  runs(): Runs;
  /** Draws outlines of the ink; null where the plain function has to. @param printed as in `Ink` */
  outliner(prints: SolidPrints, printed: { across: number; down: number }): Outliner | null;
}

/** The reference: plain TypeScript. */
export function plainStages(image: GrayImage): PixelStages {
  let ink: Uint8Array = new Uint8Array(0);
  return {
    threshold(beside) {
      beside?.();
      return (ink = sauvola(image));
    },
    rims: () => rims(ink, image.width, image.height),
    votes: (pxPerMm) => rulingVotes(image, pxPerMm),
    gather() {
      return { paper: () => gatherPaper(image, ink), ink: (ceiling) => gatherInk(image, ink, ceiling) };
    },
    markBands: (bands) => bands.forEach((band) => markBand(ink, band)),
    eraseBands: (bands, levels) => bands.forEach((band) => eraseBand(image, ink, band, levels)),
    halfContrast: (levels) => halfContrast(image, ink, levels),
    bitmap: () => ink,
    runs: () => inkRuns(ink, image.width, image.height),
    outliner: () => null,
  };
}
