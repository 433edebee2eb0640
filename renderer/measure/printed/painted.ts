import { PRINTED_BANDS } from '../sheet/corner-marks.ts';
import { cleared } from '../image/cleared.ts';
import { quantile } from '../../statistics/order-statistics.ts';
import type { Area } from '../sheet/sheet-part.ts';
import type { GrayImage } from '../types.ts';

/** So much of an area shares one level: light changes over a sheet. */
const PIECE_MM = 10;

/** The straight sheet with what is printed above, below and in areas in the paper's own brightness: what is left was written. In place. */
export function painted(image: GrayImage, pxPerMm: number, areas: readonly Area[]): GrayImage {
  for (const { x, y, width, height } of areas)
    for (let from = x; from < x + width; from += PIECE_MM)
      paint(image, pxPerMm, { x: from, y, width: Math.min(PIECE_MM, x + width - from), height });
  return cleared(image, PRINTED_BANDS.headMm * pxPerMm, PRINTED_BANDS.footMm * pxPerMm);
}

function paint({ width, height, data }: GrayImage, pxPerMm: number, area: Area): void {
  const left = Math.max(0, Math.floor(area.x * pxPerMm));
  const right = Math.min(width, Math.ceil((area.x + area.width) * pxPerMm));
  const top = Math.max(0, Math.floor(area.y * pxPerMm));
  const bottom = Math.min(height, Math.ceil((area.y + area.height) * pxPerMm));
  const grays: number[] = [];
  for (let y = top; y < bottom; y += 3) for (let x = left; x < right; x += 3) grays.push(data[y * width + x]!);
  const paper = quantile(grays, 0.8);
  if (paper === null || right <= left) return;
  for (let y = top; y < bottom; y += 1) data.fill(paper, y * width + left, y * width + right);
}
