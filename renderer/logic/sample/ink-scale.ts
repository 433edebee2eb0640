/** The scale of a pen surface: set twice, and judged. */
import type { InkScale, InkScreen, InkSurface } from '../../../db/types/sample.ts';

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

export const agrees = (first: PxPerMm, second: PxPerMm): boolean =>
  Math.abs(first.x / second.x - 1) <= AGREE && Math.abs(first.y / second.y - 1) <= AGREE;

/** Screens have square pixels, so one that measures otherwise was set wrong; a tablet may be stretched. */
export function judgeScale(scale: PxPerMm, surface: InkSurface): 'right' | 'refused' | 'stretched' {
  if (Math.abs(scale.x / scale.y - 1) <= STRETCHED) return 'right';
  return surface === 'screen' || surface === 'screen-film' ? 'refused' : 'stretched';
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
