import { PRINTED_BANDS } from '../sheet/corner-marks.ts';
import { cleared } from '../image/cleared.ts';
import { quantile } from '../../statistics/order-statistics.ts';
import type { Area } from '../sheet/sheet-part.ts';
import type { GrayImage } from '../types.ts';
import { type PrintedLine, withoutLines } from './without-lines.ts';

/** So much of an area shares one level: light changes over a sheet. */
const PIECE_MM = 10;

/** What is known to be printed on a sheet, mm from its top left corner. */
export interface PrintedOn {
  /** Letters, dots, drawings. */
  areas: readonly Area[];
  /** Pale print that is written over. */
  pale: readonly Area[];
  lines: readonly PrintedLine[];
  /** Side of the squares or boxes that letters are written in, one in each. */
  cellMm: number | null;
}

/** Pale print is at most so much darker than the paper, as a share of it; a pencil is darker. */
const PALE = 0.3;

/** The straight sheet with what is printed above, below and on it in the paper's own brightness: what is left was written. In place. */
export function painted(image: GrayImage, pxPerMm: number, { areas, pale, lines }: PrintedOn): GrayImage {
  withoutLines(image, pxPerMm, lines);
  for (const area of pale) inPieces(area, (piece) => paint(image, pxPerMm, piece, PALE));
  for (const area of areas) inPieces(area, (piece) => paint(image, pxPerMm, piece, 1));
  return cleared(image, PRINTED_BANDS.headMm * pxPerMm, PRINTED_BANDS.footMm * pxPerMm);
}

function inPieces({ x, y, width, height }: Area, each: (piece: Area) => void): void {
  for (let from = x; from < x + width; from += PIECE_MM)
    each({ x: from, y, width: Math.min(PIECE_MM, x + width - from), height });
}

/** @param most what is darker than the paper by a larger share stays */
function paint({ width, height, data }: GrayImage, pxPerMm: number, area: Area, most: number): void {
  const left = Math.max(0, Math.floor(area.x * pxPerMm));
  const right = Math.min(width, Math.ceil((area.x + area.width) * pxPerMm));
  const top = Math.max(0, Math.floor(area.y * pxPerMm));
  const bottom = Math.min(height, Math.ceil((area.y + area.height) * pxPerMm));
  const grays: number[] = [];
  for (let y = top; y < bottom; y += 3) for (let x = left; x < right; x += 3) grays.push(data[y * width + x]!);
  const paper = quantile(grays, 0.8);
  if (paper === null || right <= left) return;
  const least = paper * (1 - most);
  for (let y = top; y < bottom; y += 1)
    for (let at = y * width + left; at < y * width + right; at += 1) if (data[at]! >= least) data[at] = paper;
}
