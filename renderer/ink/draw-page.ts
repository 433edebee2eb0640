import type { InkDocument } from './ink-types.ts';
import { extentOf } from './measures/ink-words.ts';

/** The ink as a page: dark strokes on white, as a scanner would see them. */
export interface InkPage {
  width: number;
  height: number;
  /** Gray, row by row: 0 is black, 255 white. */
  data: Uint8Array;
  dpi: number;
  /** Place of the page's corner in the ink's own millimeters. */
  origin: { x: number; y: number };
}

export const PAGE_DPI = 300;
export const PEN_MM = 0.5;
export const MARGIN_MM = 20;
/** Larger pages are no sheets: a meter and a half either way, or 100 million pixels. */
const LARGEST_MM = 1500;
const MOST_PIXELS = 100_000_000;
/** Points nearer than this to the last drawn one change no pixel, px. */
const STEP_PX = 0.1;

/**
 * Draws the contacts with a round pen. The scale is the ink's own, with a white margin around.
 * @returns null without a scale, without ink, or when the ink would not fit a page
 */
export function drawInk(document: InkDocument): InkPage | null {
  const contacts = document.traces.filter(({ kind, x }) => kind === 'down' && x.length > 0);
  if (!document.calibrated || contacts.length === 0) return null;
  const { left, right, top, bottom } = extentOf(contacts);
  const [widthMm, heightMm] = [right - left + 2 * MARGIN_MM, bottom - top + 2 * MARGIN_MM];
  if (widthMm > LARGEST_MM || heightMm > LARGEST_MM) return null;
  const pxPerMm = PAGE_DPI / 25.4;
  const [width, height] = [Math.ceil(widthMm * pxPerMm), Math.ceil(heightMm * pxPerMm)];
  if (width * height > MOST_PIXELS) return null;
  const origin = { x: left - MARGIN_MM, y: top - MARGIN_MM };
  const data = new Uint8Array(width * height).fill(255);
  const radius = (PEN_MM / 2) * pxPerMm;
  for (const { x, y } of contacts) {
    let [fromX, fromY] = [(x[0]! - origin.x) * pxPerMm, (y[0]! - origin.y) * pxPerMm];
    drawSegment(data, width, height, fromX, fromY, fromX, fromY, radius);
    for (let i = 1; i < x.length; i += 1) {
      const [toX, toY] = [(x[i]! - origin.x) * pxPerMm, (y[i]! - origin.y) * pxPerMm];
      if (i < x.length - 1 && Math.hypot(toX - fromX, toY - fromY) < STEP_PX) continue;
      drawSegment(data, width, height, fromX, fromY, toX, toY, radius);
      [fromX, fromY] = [toX, toY];
    }
  }
  return { width, height, data, dpi: PAGE_DPI, origin };
}

/** A round-ended stroke, its edge one pixel soft. */
function drawSegment(
  data: Uint8Array,
  width: number,
  height: number,
  fromX: number,
  fromY: number,
  toX: number,
  toY: number,
  radius: number,
): void {
  const [dx, dy] = [toX - fromX, toY - fromY];
  const square = dx * dx + dy * dy;
  const reach = radius + 1;
  const firstRow = Math.max(0, Math.floor(Math.min(fromY, toY) - reach));
  const lastRow = Math.min(height - 1, Math.ceil(Math.max(fromY, toY) + reach));
  const firstColumn = Math.max(0, Math.floor(Math.min(fromX, toX) - reach));
  const lastColumn = Math.min(width - 1, Math.ceil(Math.max(fromX, toX) + reach));
  for (let row = firstRow; row <= lastRow; row += 1) {
    const py = row + 0.5 - fromY;
    for (let column = firstColumn; column <= lastColumn; column += 1) {
      const px = column + 0.5 - fromX;
      const along = square === 0 ? 0 : Math.min(1, Math.max(0, (px * dx + py * dy) / square));
      const away = Math.hypot(px - along * dx, py - along * dy);
      if (away >= radius + 0.5) continue;
      const value = away <= radius - 0.5 ? 0 : Math.round(255 * (away - radius + 0.5));
      const at = row * width + column;
      if (value < data[at]!) data[at] = value;
    }
  }
}
