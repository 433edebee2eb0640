/**
 * Geometry of printed sheets. All lengths in mm, origin at the sheet's top left, y down.
 */
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

export interface Point {
  x: number;
  y: number;
}

/**
 * Corner marks: black rings in the four corners, top left first, then clockwise. `x`, `y` are the rings' centers.
 * The small disc beside the top left ring tells which way up the sheet lies. A scan takes scale and perspective from them.
 */
export interface CornerMarks {
  rings: readonly [Point, Point, Point, Point];
  outerRadiusMm: number;
  innerRadiusMm: number;
  upDisc: Point & { radiusMm: number };
}

const ringRadius = 2.5;

export function cornerMarks(sheet: SheetName): CornerMarks {
  const { widthMm, heightMm } = sheetSizes[sheet];
  const near = marginMm + ringRadius;
  return {
    rings: [
      { x: near, y: near },
      { x: widthMm - near, y: near },
      { x: widthMm - near, y: heightMm - near },
      { x: near, y: heightMm - near },
    ],
    outerRadiusMm: ringRadius,
    innerRadiusMm: 1.1,
    upDisc: { x: near + 6, y: near, radiusMm: 1 },
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
  return { x: 25, y: heightMm - marginMm - ringRadius - 0.6, width: barMm, height: 1.2 };
}

/** Where lines to write on may lie: between the head and the foot of the sheet. */
export function writingArea(sheet: SheetName): Area {
  const { widthMm, heightMm } = sheetSizes[sheet];
  const top = 31;
  const foot = 31;
  return { x: marginMm, y: top, width: widthMm - 2 * marginMm, height: heightMm - top - foot };
}
