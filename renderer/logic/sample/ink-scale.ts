/** The scale of a pen surface: set twice, and judged. */
import type { Telling } from '../texts/screens/telling.ts';
import type { InkDrift, InkScale, InkScreen, InkSurface } from '../../../db/types/sample.ts';

/** Bank and ID cards: ISO/IEC 7810, ID-1. */
export const CARD_MM = { width: 85.6, height: 53.98 };
export const RULER_MM = 100;

/** Two settings agree within this share. */
const AGREE = 0.005;
/** x and y further apart than this: stretched. */
const STRETCHED = 0.01;

export interface PxPerMm {
  x: number;
  y: number;
}

export const scaleOfBox = (widthPx: number, heightPx: number, source: 'card' | 'ruler'): PxPerMm =>
  source === 'card'
    ? { x: widthPx / CARD_MM.width, y: heightPx / CARD_MM.height }
    : { x: widthPx / RULER_MM, y: heightPx / RULER_MM };

/** @param areaMm active area of the tablet, as its maker tells it */
export const scaleOfTablet = (areaMm: { width: number; height: number }, screen: InkScreen): PxPerMm => ({
  x: screen.width / areaMm.width,
  y: screen.height / areaMm.height,
});

const agrees = (first: PxPerMm, second: PxPerMm): boolean =>
  Math.abs(first.x / second.x - 1) <= AGREE && Math.abs(first.y / second.y - 1) <= AGREE;

/** Screens have square pixels, so one that measures otherwise was set wrong; a tablet may be stretched. */
export function judgeScale(scale: PxPerMm, surface: InkSurface): 'right' | 'refused' | 'stretched' {
  if (Math.abs(scale.x / scale.y - 1) <= STRETCHED) return 'right';
  return surface === 'screen' || surface === 'screen-film' ? 'refused' : 'stretched';
}

/** What a setting means: refused (set it again), the first of two, one that differs from the first, or the scale. */
export type ScaleSetting = { state: 'refused' | 'first' | 'differs' } | { state: 'set'; scale: PxPerMm };

/**
 * A scale is set twice, so that a slip shows.
 * @param first the setting before, px per mm; null = none yet
 * @returns the mean of both once they agree, else what to say
 */
export function scaleSetting(first: PxPerMm | null, scale: PxPerMm, surface: InkSurface): ScaleSetting {
  if (judgeScale(scale, surface) === 'refused') return { state: 'refused' };
  if (!first) return { state: 'first' };
  if (!agrees(first, scale)) return { state: 'differs' };
  return { state: 'set', scale: { x: (first.x + scale.x) / 2, y: (first.y + scale.y) / 2 } };
}

/** A changed zoom, display or turn of the screen makes a scale void. */
export const stillHolds = (screen: InkScreen, now: InkScreen): boolean =>
  screen.devicePixelRatio === now.devicePixelRatio && screen.width === now.width && screen.height === now.height;

export const inkScale = (scale: PxPerMm, source: InkScale['source'], at: string): InkScale => ({
  pxPerMmX: scale.x,
  pxPerMmY: scale.y,
  source,
  at,
});

/** Paper on a tablet: two printed crosses so far apart, mm. */
export const CROSSES_MM = 100;
/** Distances off by more than a share, or crosses moved by more than so many mm: the paper has moved. */
const DRIFT_SHARE = 0.01;
const DRIFT_MM = 1;

export interface TappedCrosses {
  left: { x: number; y: number };
  right: { x: number; y: number };
}

/**
 * What two taps on the crosses before writing and two after it tell.
 * @param scale px per mm of either axis; the places are px
 */
export function driftOf(before: TappedCrosses, after: TappedCrosses, scale: PxPerMm): InkDrift {
  const mm = (a: { x: number; y: number }, b: { x: number; y: number }): number =>
    Math.hypot((b.x - a.x) / scale.x, (b.y - a.y) / scale.y);
  return {
    beforeMm: mm(before.left, before.right),
    afterMm: mm(after.left, after.right),
    movedMm: Math.max(mm(before.left, after.left), mm(before.right, after.right)),
  };
}

/** The paper moved, or the scale is off: millimeters of this bout are doubtful. */
export const hasDrifted = ({ beforeMm, afterMm, movedMm }: InkDrift): boolean =>
  [beforeMm, afterMm].some((each) => Math.abs(each / CROSSES_MM - 1) > DRIFT_SHARE) || movedMm > DRIFT_MM;

export function driftSentence(drift: InkDrift, { told, decimals }: Telling): string {
  const moved = decimals(drift.movedMm, 1);
  return hasDrifted(drift)
    ? told.pen.slipped(decimals(drift.beforeMm, 1), decimals(drift.afterMm, 1), moved)
    : told.pen.layStill(moved);
}
