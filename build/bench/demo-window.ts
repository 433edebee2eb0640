/** The demo caseload in the real window, out of sight, and how long the window answers nothing meanwhile. */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import type { Page } from 'playwright-core';
import { hiddenProblems, inHiddenWindow, type HiddenWindow } from '../../electron/browser/hidden.ts';

/**
 * Opens the demo caseload in a folder of its own, which is removed.
 * @returns what `walk` answers, or a sentence where no window can be opened
 */
export async function inDemoWindow<T>(walk: (window: HiddenWindow) => Promise<T>): Promise<T | string> {
  const folder = mkdtempSync(path.join(tmpdir(), 'bench-window-'));
  const options = {
    dataFolder: path.join(folder, 'caseload'),
    save: async () => ({ saved: false as const, name: null }),
  };
  try {
    const outcome = await inHiddenWindow(options, async (window) => {
      await window.ask('app.openDemo', {});
      await window.page.reload();
      return walk(window);
    });
    return 'problem' in outcome ? hiddenProblems[outcome.problem] : outcome.done;
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** From now on the page collects what the browser tells of long tasks (W3C Long Tasks). */
export const watchLongTasks = (page: Page): Promise<void> =>
  page.evaluate(() => {
    const tasks: number[] = [];
    const from = performance.now();
    Object.assign(globalThis, { longTasks: tasks });
    new PerformanceObserver((list) => {
      for (const { startTime, duration } of list.getEntries()) if (startTime >= from) tasks.push(duration);
    }).observe({ type: 'longtask' });
  });

/** Longest task since `watchLongTasks`, ms; null where the browser told none. */
export async function longestTask(page: Page): Promise<number | null> {
  const tasks = await page.evaluate(() => (globalThis as unknown as { longTasks: number[] }).longTasks);
  return tasks.length > 0 ? Math.max(...tasks) : null;
}
