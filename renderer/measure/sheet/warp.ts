import type { GrayImage } from '../types.ts';
import type { Homography } from './homography.ts';

/**
 * The picture seen through a map, bilinear.
 * @param map from pixels of the result to pixels of the picture
 * @param rim pixels along the border of the result that repeat what lies inside them (the sheet's own edge and shadow)
 */
export function warped(image: GrayImage, map: Homography, width: number, height: number, rim: number): GrayImage {
  const data = new Uint8Array(width * height);
  const { width: w, height: h, data: source } = image;
  const [a, b, c, d, e, f, g, i, j] = map as [number, number, number, number, number, number, number, number, number];
  for (let y = 0; y < height; y += 1) {
    const v = Math.min(Math.max(y + 0.5, rim), height - rim);
    for (let x = 0; x < width; x += 1) {
      const u = x + 0.5 < rim ? rim : x + 0.5 > width - rim ? width - rim : x + 0.5;
      const scale = 1 / (g * u + i * v + j);
      // Pixel centers lie at halves.
      const px = Math.min(Math.max((a * u + b * v + c) * scale - 0.5, 0), w - 1.001);
      const py = Math.min(Math.max((d * u + e * v + f) * scale - 0.5, 0), h - 1.001);
      const ix = px | 0;
      const iy = py | 0;
      const fx = px - ix;
      const fy = py - iy;
      const at = iy * w + ix;
      const top = source[at]! + (source[at + 1]! - source[at]!) * fx;
      const bottom = source[at + w]! + (source[at + w + 1]! - source[at + w]!) * fx;
      data[y * width + x] = top + (bottom - top) * fy + 0.5;
    }
  }
  return { width, height, data };
}
