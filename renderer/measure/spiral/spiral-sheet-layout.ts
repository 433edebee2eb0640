/**
 * The printed sheet of two spirals: one gray to trace, one place to draw freely. Lengths in mm from the sheet's top left
 * corner. The sheet is drawn and measured from these numbers.
 */
import { PRINTED_BANDS } from '../sheet/corner-marks.ts';
import type { Area } from '../sheet/sheet-part.ts';

export const SPIRAL_SHEET = {
  /** Four turns, as wide as half a sheet of US Letter allows; wide apart, so that a strong swing stays in its turn. */
  turns: 4,
  pitchMm: 11,
  /** Room at the left of the spirals for words and the time. */
  wordsMm: 68,
  marginMm: 15,
  /** The printed line: thin, and paler than a pen, so that the two can be told apart. Gray 0 is black. */
  lineMm: 0.5,
  gray: 0.74,
} as const;

/** Where a spiral lies: the box that holds its ink, and the middle of what is printed in it. */
export interface SpiralPlace extends Area {
  centerX: number;
  centerY: number;
}

/** The upper place is traced, the lower one free. */
export function spiralPlaces(widthMm: number, heightMm: number): { traced: SpiralPlace; free: SpiralPlace } {
  const { wordsMm, marginMm } = SPIRAL_SHEET;
  const height = (heightMm - PRINTED_BANDS.headMm - PRINTED_BANDS.footMm) / 2;
  const place = (y: number): SpiralPlace => {
    const width = widthMm - wordsMm - marginMm;
    return { x: wordsMm, y, width, height, centerX: wordsMm + width / 2, centerY: y + height / 2 };
  };
  return { traced: place(PRINTED_BANDS.headMm), free: place(PRINTED_BANDS.headMm + height) };
}
