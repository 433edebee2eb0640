import type { Page } from 'playwright-core';
import { openClient } from '../../electron/browser/walk.ts';
import { inDemoWindow, longestTask, watchLongTasks } from './demo-window.ts';

/** Tasks of the window longer than this are told by the browser (W3C Long Tasks). */
export const LONG_TASK_MS = 50;

/** What the window did while a page was brought in, measured and drawn over. */
export interface WindowTimes {
  /** From the file to the numbers on the screen, ms. */
  shownMs: number;
  /** Longest time in which the window answered nothing, ms; null when none reached `LONG_TASK_MS`. */
  longestMs: number | null;
}

async function walk(page: Page, jpeg: Uint8Array, lines: number): Promise<WindowTimes> {
  await openClient(page, 'Q-105');
  await page.getByRole('button', { name: 'Start a visit today' }).click();
  await page.keyboard.press('Alt+2');
  await page.getByRole('radio', { name: 'A text to compare' }).click();
  await page.getByLabel('Task').selectOption('free');
  await page.getByRole('button', { name: 'Start this sample' }).click();
  await page
    .getByText(/^Free writing/)
    .first()
    .waitFor();
  const start = performance.now();
  const picture = { name: 'page.jpg', mimeType: 'image/jpeg', buffer: Buffer.from(jpeg) };
  await page.getByLabel('Picture or PDF of the page').setInputFiles(picture);
  // Handing the file over is the driver's work in the page, not the app's.
  await watchLongTasks(page);
  await page.waitForFunction(() => document.querySelector('svg .word') !== null, undefined, { timeout: 60_000 });
  const shownMs = performance.now() - start;
  // What draws the overlay comes right behind.
  await page.waitForTimeout(1000);
  if (!(await page.getByRole('heading', { name: new RegExp(`^${lines} lines`) }).isVisible()))
    throw new Error('the page was not read as it was written');
  return { shownMs, longestMs: await longestTask(page) };
}

/**
 * Brings a page into the demo caseload in the real window, out of sight.
 * @returns a sentence where no window can be opened
 */
export const windowTimes = (jpeg: Uint8Array, lines: number): Promise<WindowTimes | string> =>
  inDemoWindow(({ page }) => walk(page, jpeg, lines));
