import type { GrayImage } from '../types.ts';

/** A place on the straight sheet, mm from its top left corner. */
export interface Area {
  x: number;
  y: number;
  width: number;
  height: number;
}

/** The picture of an area of the straight sheet, and the pixel where it begins. */
export function partOfSheet(image: GrayImage, pxPerMm: number, area: Area) {
  const left = Math.max(0, Math.round(area.x * pxPerMm));
  const top = Math.max(0, Math.round(area.y * pxPerMm));
  const width = Math.min(image.width - left, Math.round(area.width * pxPerMm));
  const height = Math.min(image.height - top, Math.round(area.height * pxPerMm));
  const data = new Uint8Array(width * height);
  for (let y = 0; y < height; y += 1) {
    const from = (top + y) * image.width + left;
    data.set(image.data.subarray(from, from + width), y * width);
  }
  return { part: { width, height, data }, left, top };
}
