import { paperAt, inkAt } from '../image/contrast.ts';
import type { Levels } from '../image/contrast.ts';
import type { Layout } from '../layout.ts';
import { median } from '../numbers.ts';
import type { GrayImage } from '../types.ts';

/** Every so many columns of the outlines are looked at. */
const EVERY = 13;
/** Pixels from the edge in which its steepest place lies. */
const REACH = 6;

/**
 * Blur of the picture as the standard deviation of a Gaussian, pixels: from the steepest rise across the upper edges of
 * the ink (a blurred step of contrast C rises by C / (sigma sqrt(2 pi)) a pixel). Null without ink.
 */
export function blurPx(image: GrayImage, levels: Levels, layout: Layout): number | null {
  const sigmas: number[] = [];
  const { width, height, data } = image;
  for (const line of layout.lines)
    for (const { blob } of line.blobs)
      for (let x = blob.left; x < blob.right; x += EVERY) {
        // The first ink from above in this column.
        let y = blob.top;
        const half = (paperAt(levels, x, y) + inkAt(levels, x, y)) / 2;
        while (y < blob.bottom && data[y * width + x]! > half) y += 1;
        if (y >= blob.bottom || y < REACH + 1 || y + REACH + 1 >= height) continue;
        let steepest = 0;
        for (let d = -REACH; d <= REACH; d += 1)
          steepest = Math.max(steepest, (data[(y + d - 1) * width + x]! - data[(y + d + 1) * width + x]!) / 2);
        if (steepest > 0)
          sigmas.push((paperAt(levels, x, y) - inkAt(levels, x, y)) / (steepest * Math.sqrt(2 * Math.PI)));
      }
  return median(sigmas);
}
