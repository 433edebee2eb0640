/**
 * Geometry of printed sheets. All lengths in mm, origin at the sheet's top left, y down.
 */
import { CORNER_MARK, PRINTED_BANDS } from '../../../measure/index.ts';

export type SheetName = 'A4' | 'Letter';

export interface SheetSize {
  widthMm: number;
  heightMm: number;
  source: string;
}

export const sheetSizes: Record<SheetName, SheetSize> = {
  A4: { widthMm: 210, heightMm: 297, source: 'ISO 216' },
  Letter: { widthMm: 215.9, heightMm: 279.4, source: 'US Letter, 8.5 by 11 inches' },
};

/** Nothing is printed nearer to an edge: printers lose 4 to 6 mm (common practice, no source). */
export const marginMm = 15;

interface Point {
  x: number;
  y: number;
}

/**
 * Corner marks: black squares in the four corners, top left first, then clockwise, by their centers. The top left one
 * has a white square in it, which tells which way up the sheet lies. A scan takes scale and perspective from them, so
 * their sizes are those that the measuring looks for.
 */
export interface CornerMarks {
  centers: readonly [Point, Point, Point, Point];
  sideMm: number;
  holeMm: number;
}

export function cornerMarks(sheet: SheetName): CornerMarks {
  const { widthMm, heightMm } = sheetSizes[sheet];
  const { sideMm, holeMm, insetMm } = CORNER_MARK;
  return {
    centers: [
      { x: insetMm, y: insetMm },
      { x: widthMm - insetMm, y: insetMm },
      { x: widthMm - insetMm, y: heightMm - insetMm },
      { x: insetMm, y: heightMm - insetMm },
    ],
    sideMm,
    holeMm,
  };
}

export interface Area {
  x: number;
  y: number;
  width: number;
  height: number;
}

export const barMm = 100;

/** The check bar: exactly 100 mm from end to end. */
export function checkBar(sheet: SheetName): Area {
  const { heightMm } = sheetSizes[sheet];
  return { x: 25, y: heightMm - CORNER_MARK.insetMm - 0.6, width: barMm, height: 1.2 };
}

/** Where lines to write on may lie: between the head and the foot of the sheet. */
export function writingArea(sheet: SheetName): Area {
  const { widthMm, heightMm } = sheetSizes[sheet];
  const { headMm, footMm } = PRINTED_BANDS;
  return { x: marginMm, y: headMm, width: widthMm - 2 * marginMm, height: heightMm - headMm - footMm };
}
