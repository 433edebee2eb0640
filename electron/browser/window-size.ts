/** Remembers the window's size beside the caseload. It names nobody. */
import { readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import type { Page } from 'playwright-core';
import type { WindowSize } from './launch.ts';

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

/** Looks at the window's size every few seconds and keeps it when it changed. */
export function keepSize(page: Page, folder: string): void {
  let kept = '';
  const look = async () => {
    const size = await page.evaluate(() => ({ width: outerWidth, height: outerHeight }));
    const text = JSON.stringify(size);
    if (text === kept || !fits(size.width) || !fits(size.height)) return;
    kept = text;
    writeFileSync(path.join(folder, 'window.json'), text);
  };
  const timer = setInterval(() => void look().catch(() => undefined), 4000);
  timer.unref();
  page.on('close', () => clearInterval(timer));
}
