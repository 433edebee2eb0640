import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import type { Page } from 'playwright-core';
import { hiddenProblems, inHiddenWindow } from '../../electron/browser/hidden.ts';
import { openClient } from '../../electron/browser/walk.ts';

/** Tasks of the window longer than this are told by the browser (W3C Long Tasks). */
export const LONG_TASK_MS = 50;

/** What the window did while a page was brought in, measured and drawn over. */
export interface WindowTimes {
  /** From the file to the numbers on the screen, ms. */
  shownMs: number;
  /** Longest time in which the window answered nothing, ms; null when none reached `LONG_TASK_MS`. */
  longestMs: number | null;
}

/** Runs in the page: from now on collects what the browser tells of long tasks, ms. */
function watch(): void {
  const tasks: number[] = [];
  const from = performance.now();
  Object.assign(globalThis, { longTasks: tasks });
  new PerformanceObserver((list) => {
    for (const { startTime, duration } of list.getEntries()) if (startTime >= from) tasks.push(duration);
  }).observe({ type: 'longtask' });
}

async function walk(page: Page, jpeg: Uint8Array, lines: number): Promise<WindowTimes> {
  await page.getByRole('navigation', { name: 'Lists' }).waitFor();
  await openClient(page, 'Q-105');
  await page.getByRole('button', { name: 'Start a visit today' }).click();
  await page.keyboard.press('Alt+2');
  await page.getByLabel('Task').selectOption('free');
  await page.getByRole('button', { name: 'Start this sample' }).click();
  await page.getByText(/^Free writing/).waitFor();
  const start = performance.now();
  const picture = { name: 'page.jpg', mimeType: 'image/jpeg', buffer: Buffer.from(jpeg) };
  await page.getByLabel('Picture or PDF of the page').setInputFiles(picture);
  // Handing the file over is the driver's work in the page, not the app's.
  await page.evaluate(watch);
  await page.waitForFunction(() => document.querySelector('svg .word') !== null, undefined, { timeout: 60_000 });
  const shownMs = performance.now() - start;
  // What draws the overlay comes right behind.
  await page.waitForTimeout(1000);
  if (!(await page.getByRole('heading', { name: new RegExp(`^${lines} lines`) }).isVisible()))
    throw new Error('the page was not read as it was written');
  const tasks = await page.evaluate(() => (globalThis as unknown as { longTasks: number[] }).longTasks);
  return { shownMs, longestMs: tasks.length > 0 ? Math.max(...tasks) : null };
}

/**
 * Brings a page into the demo caseload in the real window, out of sight.
 * @returns a sentence where no window can be opened
 */
export async function windowTimes(jpeg: Uint8Array, lines: number): Promise<WindowTimes | string> {
  const folder = mkdtempSync(path.join(tmpdir(), 'bench-window-'));
  const options = {
    dataFolder: path.join(folder, 'caseload'),
    save: async () => ({ saved: false as const, name: null }),
  };
  try {
    const outcome = await inHiddenWindow(options, async ({ page, ask }) => {
      await ask('app.openDemo', {});
      await page.reload();
      return walk(page, jpeg, lines);
    });
    return 'problem' in outcome ? hiddenProblems[outcome.problem] : outcome.done;
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
