import { median } from '../../statistics/order-statistics.ts';
import type { GrayImage } from '../types.ts';

/** Long side of the small picture in which the sheet is looked for. */
const SMALL = 256;
/** A table is darker than the sheet by at least this many gray levels. */
export const CONTRAST = 28;

/** The picture made small: mean gray of squares of `step` pixels. */
export interface SmallPicture {
  width: number;
  height: number;
  step: number;
  values: Float32Array;
}

/** The small picture, from up to nine pixels of each square. */
export function shrunk(image: GrayImage): SmallPicture {
  const step = Math.max(1, Math.ceil(Math.max(image.width, image.height) / SMALL));
  const width = Math.floor(image.width / step);
  const height = Math.floor(image.height / step);
  const every = Math.max(1, Math.ceil(step / 3));
  const looked = Math.ceil(step / every) ** 2;
  const values = new Float32Array(width * height);
  // Row by row of the large picture, as it lies in memory.
  for (let y = 0; y < height; y += 1) {
    const row = y * width;
    for (let dy = 0; dy < step; dy += every)
      for (let x = 0, at = (y * step + dy) * image.width; x < width; x += 1, at += step) {
        let sum = 0;
        for (let i = at; i < at + step; i += every) sum += image.data[i]!;
        values[row + x]! += sum;
      }
    for (let x = 0; x < width; x += 1) values[row + x]! /= looked;
  }
  return { width, height, step, values };
}

/** Gray level between table and sheet (Otsu 1979 on the small picture); null when the rim is as bright as the middle. */
export function tableCut(small: SmallPicture): { cut: number; contrast: number } | null {
  const counts = new Int32Array(256);
  const n = small.values.length;
  for (let i = 0; i < n; i += 1) counts[Math.round(small.values[i]!)]! += 1;
  let total = 0;
  for (let g = 0; g < 256; g += 1) total += g * counts[g]!;
  let [below, sum, best, cut, darkMean, brightMean] = [0, 0, -1, 0, 0, 0];
  for (let g = 0; g < 255; g += 1) {
    below += counts[g]!;
    sum += g * counts[g]!;
    if (below === 0 || below === n) continue;
    const dark = sum / below;
    const bright = (total - sum) / (n - below);
    const between = below * (n - below) * (bright - dark) ** 2;
    if (between > best) [best, cut, darkMean, brightMean] = [between, g + 0.5, dark, bright];
  }
  if (brightMean - darkMean < CONTRAST) return null;
  const rim = rimValues(small);
  const dark = rim.filter((v) => v < cut).length / rim.length;
  return median(rim)! < cut || dark > 0.2 ? { cut, contrast: brightMean - darkMean } : null;
}

/** Usual rise of gray across the border of the mask, over three small pixels. */
export function sharpness(mask: Uint8Array, { width, height, values }: SmallPicture): number {
  const rises: number[] = [];
  for (let y = 1; y + 1 < height; y += 1)
    for (let x = 1; x + 1 < width; x += 1) {
      const i = y * width + x;
      if (!mask[i] || (mask[i - 1] && mask[i + 1] && mask[i - width] && mask[i + width])) continue;
      rises.push(
        Math.max(Math.abs(values[i + 1]! - values[i - 1]!), Math.abs(values[i + width]! - values[i - width]!)),
      );
    }
  return median(rises) ?? 0;
}

function rimValues(small: SmallPicture): number[] {
  const { width, height, values } = small;
  const rim: number[] = [];
  for (let x = 0; x < width; x += 1) rim.push(values[x]!, values[(height - 1) * width + x]!);
  for (let y = 1; y < height - 1; y += 1) rim.push(values[y * width]!, values[y * width + width - 1]!);
  return rim;
}

/** Share of the top, right, bottom, left edge of the picture that the sheet touches. */
export function touches(mask: Uint8Array, { width, height }: SmallPicture): number[] {
  let [top, right, bottom, left] = [0, 0, 0, 0];
  for (let x = 0; x < width; x += 1) {
    top += mask[x]!;
    bottom += mask[(height - 1) * width + x]!;
  }
  for (let y = 0; y < height; y += 1) {
    left += mask[y * width]!;
    right += mask[y * width + width - 1]!;
  }
  return [top / width, right / height, bottom / width, left / height];
}
