import type { GrayImage } from '../types.ts';
import { IDENTITY } from './homography.ts';
import type { Homography } from './homography.ts';

/** The picture after quarter turns clockwise, and the map from its pixels back to the picture as given. */
export function quarterTurned(image: GrayImage, turns: 0 | 1 | 2 | 3): { image: GrayImage; toPicture: Homography } {
  const { width: w, height: h, data: source } = image;
  if (turns === 0) return { image, toPicture: IDENTITY };
  const data = new Uint8Array(source.length);
  if (turns === 2) {
    for (let i = 0; i < source.length; i += 1) data[source.length - 1 - i] = source[i]!;
    return { image: { width: w, height: h, data }, toPicture: [-1, 0, w, 0, -1, h, 0, 0, 1] };
  }
  for (let y = 0; y < h; y += 1)
    for (let x = 0; x < w; x += 1) data[turns === 1 ? x * h + (h - 1 - y) : (w - 1 - x) * h + y] = source[y * w + x]!;
  const toPicture = turns === 1 ? [0, 1, 0, -1, 0, h, 0, 0, 1] : [0, -1, w, 1, 0, 0, 0, 0, 1];
  return { image: { width: h, height: w, data }, toPicture };
}
