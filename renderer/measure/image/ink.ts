import { blurPx } from './blur.ts';
import { connectedComponents } from './components.ts';
import type { Components } from './components.ts';
import { localLevels } from './contrast.ts';
import type { Levels } from './contrast.ts';
import { crossingOf, printOf, solidPrints } from './ruling-erase.ts';
import type { Printed } from './ruling-bands.ts';
import type { Print } from './ruling-erase.ts';
import type { Rulings } from './printed-rulings.ts';
import type { PixelStages } from './pixel-stages.ts';
import type { Outliner } from './wasm/fast-outlines.ts';
import type { Runs } from './runs.ts';
import { median } from '../../statistics/order-statistics.ts';
import type { GrayImage } from '../types.ts';

/** The ink of a page without its printed lines. */
export interface Ink {
  /** 1 = ink, 0 = paper, 2 = ink of a printed line that was taken out. */
  bitmap: Uint8Array;
  levels: Levels;
  rulings: Rulings;
  /** How much darker than the paper printed lines are, across and down the page, gray levels. */
  printed: { across: number; down: number };
  /** Whether a box of pixels holds nothing but a crossing of printed lines. */
  isCrossing(left: number, top: number, right: number, bottom: number): boolean;
  /** The printed line across a column (`down`) or row near a pixel, as seen outward from it; null where there is none. */
  print(x: number, y: number, step: 1 | -1, down: boolean): Print | null;
  /** Standard deviation of the picture's blur, pixels; null without ink. */
  blurPx: number | null;
  runs: Runs;
  components: Components;
  /** Draws outlines fast; null where that is not to be had. */
  outliner: Outliner | null;
}

/**
 * From the first threshold to pieces of ink: printed lines are taken out, then the ink is thresholded again
 * at half contrast.
 * @param stages those of the picture, after its first threshold
 */
export function inkOf(image: GrayImage, stages: PixelStages, { rulings, bands }: Printed): Ink {
  stages.markBands(bands);
  const levels = localLevels(image, stages.gather());
  stages.eraseBands(bands, levels);
  stages.halfContrast(levels);
  const runs = stages.runs();
  const components = connectedComponents(runs, 1);
  const depth = (along: number): number =>
    median(bands.filter((band) => band.along === along).map((band) => band.depth)) ?? 0;
  const printed = { across: depth(1), down: depth(image.width) };
  const blur = blurPx(image, levels, components);
  const prints = solidPrints(bands, blur ?? 0);
  return {
    bitmap: stages.bitmap(),
    levels,
    rulings,
    printed,
    isCrossing: crossingOf(bands),
    print: printOf(prints),
    blurPx: blur,
    runs,
    components,
    outliner: stages.outliner(prints, printed),
  };
}
