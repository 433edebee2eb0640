import type { PageWarning } from '../types.ts';

/** What a drawn spiral shows. Lengths in mm; null where it cannot be told. */
export interface SpiralResult {
  turns: number | null;
  /** Root mean square distance of the line from the spiral that it follows, along the radius, without its slow drift. */
  radialRmsMm: number | null;
  /** The same as a share of the distance between turns. */
  radialRmsPercent: number | null;
  /** Swings out and back on a turn. */
  swingsPerTurn: number | null;
  /** The strongest rhythm along the line, swings a cm; null where the line is even. */
  swingsPerCm: number | null;
  /** Swings a second; null without the time of drawing. */
  frequencyHz: number | null;
  /** Length of the spiral followed, mm. */
  lengthMm: number | null;
  warnings: PageWarning[];
}

/** A spiral of the sheet with what is drawn of it in the window. */
export interface SheetSpiral extends SpiralResult {
  /** Root mean square distance from the printed spiral, along the radius, mm; null where none was printed. */
  fromPrintedRmsMm: number | null;
  /** The even spiral that the line follows, in pixels of the picture as given: x, y, x, y … */
  followed: number[];
  /** How far the line leaves it, mm, + outwards, every `SPIRAL_STEP_MM` along it from the middle. */
  offsetsMm: number[];
}

/** Both spirals of our sheet; only `free` where a picture without corner marks holds one spiral. */
export interface SpiralSheetResult {
  /** Version of the method: results of different versions are not compared. */
  version: string;
  dpi: number | null;
  scaleSource: string | null;
  traced: SheetSpiral | null;
  free: SheetSpiral | null;
  warnings: PageWarning[];
}
