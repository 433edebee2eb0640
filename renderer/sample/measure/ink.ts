import { connectedComponents } from './image/components.ts';
import type { Components } from './image/components.ts';
import { halfContrast, localLevels } from './image/contrast.ts';
import type { Levels } from './image/contrast.ts';
import { eraseRulings, markRulings } from './image/ruling-erase.ts';
import type { Rulings } from './image/rulings.ts';
import { inkRuns } from './image/runs.ts';
import type { Runs } from './image/runs.ts';
import type { GrayImage } from './types.ts';

/** The ink of a page without its printed lines. */
export interface Ink {
  /** 1 = ink, 0 = paper, 2 = ink of a printed line that was taken out. */
  bitmap: Uint8Array;
  levels: Levels;
  rulings: Rulings;
  runs: Runs;
  components: Components;
}

/**
 * From the first threshold to pieces of ink: printed lines are taken out, then the ink is thresholded again
 * at half contrast.
 * @param bitmap first-pass ink; changed in place
 */
export function inkOf(image: GrayImage, bitmap: Uint8Array, rulings: Rulings, pxPerMm: number): Ink {
  const bands = markRulings(image, bitmap, rulings, pxPerMm);
  const levels = localLevels(image, bitmap);
  eraseRulings(image, bitmap, bands, levels);
  halfContrast(image, bitmap, levels);
  const runs = inkRuns(bitmap, image.width, image.height);
  return { bitmap, levels, rulings, runs, components: connectedComponents(runs, 1) };
}
