import { median } from '../../statistics/order-statistics.ts';
import type { GrayImage } from '../types.ts';
import type { Components } from './components.ts';
import { inkAt, paperAt } from './contrast.ts';
import type { Levels } from './contrast.ts';

/** Every so many columns of the outlines are looked at. */
const EVERY = 13;
/** Pixels from the edge in which its steepest place lies. */
const REACH = 6;
/** Ink lower than this many pixels is a speck or a dot. */
const LEAST_HEIGHT = 8;

/**
 * Blur of the picture as the standard deviation of a Gaussian, pixels: from the steepest rise across the upper edges of
 * the ink (a blurred step of contrast C rises by C / (sigma sqrt(2 pi)) a pixel). Null without ink.
 */
export function blurPx(
  image: GrayImage,
  levels: Levels,
  { count, left, right, top, bottom }: Components,
): number | null {
  const sigmas: number[] = [];
  const { width, height, data } = image;
  for (let c = 0; c < count; c += 1) {
    if (bottom[c]! - top[c]! < LEAST_HEIGHT) continue;
    for (let x = left[c]!; x < right[c]!; x += EVERY) {
      // The first ink from above in this column.
      let y = top[c]!;
      const contrast = paperAt(levels, x, y) - inkAt(levels, x, y);
      const half = paperAt(levels, x, y) - contrast / 2;
      while (y < bottom[c]! && data[y * width + x]! > half) y += 1;
      if (y >= bottom[c]! || y < REACH + 1 || y + REACH + 1 >= height) continue;
      let steepest = 0;
      let darkest = 255;
      for (let d = -REACH; d <= REACH; d += 1) {
        steepest = Math.max(steepest, (data[(y + d - 1) * width + x]! - data[(y + d + 1) * width + x]!) / 2);
        darkest = Math.min(darkest, data[(y + d) * width + x]!);
      }
      // A thin stroke is paler and its edge less steep: its own contrast counts.
      const own = Math.min(contrast, paperAt(levels, x, y) - darkest);
      if (steepest > 0) sigmas.push(own / (steepest * Math.sqrt(2 * Math.PI)));
    }
  }
  return median(sigmas);
}
