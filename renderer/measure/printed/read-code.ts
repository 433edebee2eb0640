import type { GrayImage } from '../types.ts';
import { CODE_GRID, codeOfSquares, codePlace } from './page-code.ts';

/** Gray levels between paper and print under which there is no print. */
const LEAST_CONTRAST = 25;
/** A curled sheet moves the code by so much, mm; and the step of looking for it. */
const [REACH_MM, STEP_MM] = [1.8, 0.3];
/** Share of a square that is looked at: its edges run. */
const INNER = 0.5;

/** Mean gray of a square of the straight sheet, middle and side in px. */
export function meanOf({ width, height, data }: GrayImage, x: number, y: number, side: number): number {
  const half = Math.max(0.5, side / 2);
  const [left, right] = [Math.max(0, Math.round(x - half)), Math.min(width, Math.round(x + half))];
  const [top, bottom] = [Math.max(0, Math.round(y - half)), Math.min(height, Math.round(y + half))];
  let sum = 0;
  for (let row = top; row < bottom; row += 1)
    for (let column = left; column < right; column += 1) sum += data[row * width + column]!;
  return sum / Math.max(1, (right - left) * (bottom - top));
}

const shifts: readonly (readonly [x: number, y: number])[] = (() => {
  const steps = Math.round(REACH_MM / STEP_MM);
  const all: [number, number][] = [];
  for (let y = -steps; y <= steps; y += 1)
    for (let x = -steps; x <= steps; x += 1) all.push([x * STEP_MM, y * STEP_MM]);
  return all.sort((a, b) => Math.hypot(...a) - Math.hypot(...b));
})();

/**
 * The code of a straight sheet as 24 hex digits; 'blank' where nothing is printed in its place, 'unreadable' where
 * something is, but no code comes of it.
 */
export function readCode(
  image: GrayImage,
  pxPerMm: number,
  size: { widthMm: number; heightMm: number },
): { text: string } | 'blank' | 'unreadable' {
  const { columns, rows, moduleMm } = CODE_GRID;
  const place = codePlace(size.widthMm, size.heightMm);
  let seen = 0;
  for (const [dx, dy] of shifts) {
    const grays = Array.from({ length: columns * rows }, (_, at) => {
      const x = place.x + ((at % columns) + 0.5) * moduleMm + dx;
      const y = place.y + (Math.floor(at / columns) + 0.5) * moduleMm + dy;
      return meanOf(image, x * pxPerMm, y * pxPerMm, INNER * moduleMm * pxPerMm);
    });
    const sorted = [...grays].sort((a, b) => a - b);
    const [dark, bright] = [sorted[Math.floor(0.15 * grays.length)]!, sorted[Math.floor(0.85 * grays.length)]!];
    seen = Math.max(seen, bright - dark);
    if (bright - dark < LEAST_CONTRAST) continue;
    const text = codeOfSquares(grays.map((gray) => gray < (dark + bright) / 2));
    if (text !== null) return { text };
  }
  return seen < LEAST_CONTRAST ? 'blank' : 'unreadable';
}
