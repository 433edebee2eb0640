/** The size at which a reader sees a line: that of the paper, or one enlargement for all. */
import type { Telling } from '../texts/screens/telling.ts';
import type { InkDevice, InkScreen } from '../../../db/types/sample.ts';
import type { Reading } from '../../../db/types/reading.ts';
import type { ScreenScale } from '../../../db/types/screen-scale.ts';
import type { LinePicture } from './line-pictures.ts';

/** Size of a picture on the screen, window pixels. */
export interface ShownSize {
  width: number;
  height: number;
}

/** The true size that was set for writing on this screen with a pen; null for a tablet beside it. */
export function scaleOfPenScreen({ surface, screen, scale }: InkDevice): ScreenScale | null {
  if (surface !== 'screen' && surface !== 'screen-film') return null;
  return { screen, pxPerMm: (scale.pxPerMmX + scale.pxPerMmY) / 2, at: scale.at };
}

/**
 * Window pixels for one mm now. Zooming changes how many screen pixels make one of the window, not the screen: the
 * line keeps its size then.
 * @returns null without a size set, or on another screen than it was set for
 */
export function pxPerMmNow(scale: ScreenScale | null, now: InkScreen): number | null {
  if (!scale || scale.screen.width !== now.width || scale.screen.height !== now.height) return null;
  return (scale.pxPerMm * scale.screen.devicePixelRatio) / now.devicePixelRatio;
}

/**
 * Size at which a line is shown; it may be wider than the window and is then moved, never made smaller.
 * @param pxPerMm of the window, from `pxPerMmNow`
 * @param enlargement 1 = as written
 * @returns null where the screen's or the page's scale is not known
 */
export function shownSize(
  { width, height, turns, pxPerMm: ofPicture }: LinePicture,
  pxPerMm: number | null,
  enlargement: number,
): ShownSize | null {
  if (pxPerMm === null || ofPicture === null) return null;
  const times = (pxPerMm * enlargement) / ofPicture;
  const [across, down] = turns % 2 === 0 ? [width, height] : [height, width];
  return { width: across * times, height: down * times };
}

/** Of a reading begun before and gone on with: null once its lines were not all seen at one size. */
export const sameEnlargement = (before: Pick<Reading, 'enlargement' | 'lines'> | null, now: number | null) =>
  before === null || before.lines.length === 0 || before.enlargement === now ? now : null;

/** As the model of change compares readings: percent of the true size, or 'unknown-size'; null = true size. */
export function viewOf({ enlargement }: Pick<Reading, 'enlargement'>): string | null {
  if (enlargement === undefined || enlargement === 1) return null;
  return enlargement === null ? 'unknown-size' : String(Math.round(enlargement * 100));
}

/** "at true size", "2 times as large as written" or "at a size not known". */
export function sizeWords(enlargement: number | null, { told, decimals }: Telling): string {
  const words = told.reading;
  if (enlargement === null) return words.sizeUnknown;
  return enlargement === 1 ? words.trueSize : words.timesAsLarge(decimals(enlargement, 2, 0));
}
