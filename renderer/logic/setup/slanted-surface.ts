/** The slanted writing surface: rise h = L sin(angle), L the sloping length. */
import type { SetupTable } from '../../../db/types/items.ts';

export interface Slant {
  /** Degrees against the table. */
  angle: number;
  /** Below, within or above the trial range; too steep to write on. */
  advice: 'flat' | 'suggested' | 'steep' | 'too-steep';
}

const DEG = Math.PI / 180;

/** Rise in mm of a surface of `length` mm at `angle` degrees. */
export const riseFor = (length: number, angle: number): number => length * Math.sin(angle * DEG);

/** Angle in degrees of a surface that rises `rise` mm over its sloping `length`; NaN where the rise exceeds it. */
export const angleFor = (rise: number, length: number): number => Math.asin(rise / length) / DEG;

/** Angle and advice of a measured surface; null when it was not measured. */
export function slantOf(rise: number | null, length: number | null, constants: SetupTable): Slant | null {
  if (rise === null || length === null) return null;
  const angle = angleFor(rise, length);
  const { suggested, writingHighest } = constants.slant;
  const advice =
    angle > writingHighest.value
      ? 'too-steep'
      : angle > suggested.max
        ? 'steep'
        : angle < suggested.min
          ? 'flat'
          : 'suggested';
  return { angle, advice };
}
