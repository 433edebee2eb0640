/** Remembers the window's size beside the caseload. It names nobody. */
import { readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';

export interface WindowSize {
  /** Outer width and height in CSS pixels. */
  width: number;
  height: number;
}

/** Fits a 1280 x 720 laptop with its system bar, in CSS pixels. */
export const FIRST_SIZE: WindowSize = { width: 1280, height: 800 };

const SMALLEST = 320;
const LARGEST = 16_000;

const fits = (side: unknown): side is number =>
  typeof side === 'number' && Number.isInteger(side) && side >= SMALLEST && side <= LARGEST;

/** Reads a remembered size; anything unusable gives the first size. */
export function readSize(text: string): WindowSize {
  try {
    const { width, height } = JSON.parse(text) as Partial<WindowSize>;
    return fits(width) && fits(height) ? { width, height } : FIRST_SIZE;
  } catch {
    return FIRST_SIZE;
  }
}

export function rememberedSize(folder: string): WindowSize {
  try {
    return readSize(readFileSync(path.join(folder, 'window.json'), 'utf8'));
  } catch {
    return FIRST_SIZE;
  }
}

/** Keeps a usable size; a folder that cannot be written just forgets it. */
export function keepSize(folder: string, size: WindowSize): void {
  if (!fits(size.width) || !fits(size.height)) return;
  try {
    writeFileSync(path.join(folder, 'window.json'), JSON.stringify({ width: size.width, height: size.height }));
  } catch {
    // Not worth a message: the next start opens at the last size that was kept.
  }
}
