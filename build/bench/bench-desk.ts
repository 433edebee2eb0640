/**
 * The desk in the real window, out of sight: a caseload of 5,001 clients against one of 50, a client with three years of
 * weekly visits, what screens leave behind, and the first screen against a bare window of the same browser.
 */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import type { CDPSession, Page } from 'playwright-core';
import { findBrowser } from '../../electron/browser/find.js';
import { hiddenProblems, inHiddenWindow } from '../../electron/browser/hidden.ts';
import { launch } from '../../electron/browser/launch.ts';
import { openClient } from '../../electron/browser/walk.ts';
import { median } from '../../renderer/statistics/order-statistics.ts';
import { longestTask, watchLongTasks } from './demo-window.ts';
import { ONE, PASSPHRASE, writeCaseload } from './desk-caseload.ts';

export interface DeskTimes {
  /** Rows of tables in the document with 5,001 clients. */
  rows: number;
  /** Work of a keystroke in Find with 5,001 clients over that with 50. */
  findRatio: number;
  /** Longest task while a note is typed with 5,001 clients, ms; null: none of 50. */
  typingMs: number | null;
  /** Work to show Progress and Read back of 156 visits, over that of Pages. */
  progressRatio: number;
  readBackRatio: number;
  /** Nodes and listeners that 50 visits to Sample and Progress leave behind. */
  nodesLeft: number;
  listenersLeft: number;
  /** From the start to the first screen, over an empty window of the same browser. */
  startRatio: number;
}

const [FEW, MANY, WEEKS] = [50, 5001, 156] as const;
const [KEYSTROKES, LOOKS, STARTS, VISITS] = [12, 7, 5, 50] as const;
/** Long enough for a screen to have nothing more to do. */
const SETTLED_MS = 1200;
/** Work of half a second in which a page does nothing. */
const QUIET_MS = 4;

/** Opens a caseload in the hidden window. @throws Error where no window can be opened */
async function inCaseload<T>(folder: string, use: (page: Page) => Promise<T>): Promise<T> {
  const save = async () => ({ saved: false as const, name: null });
  const outcome = await inHiddenWindow({ dataFolder: folder, save }, async ({ page, ask }) => {
    await ask('app.unlock', { passphrase: PASSPHRASE });
    await page.reload();
    await page.getByRole('button', { name: /^Find/ }).first().waitFor();
    await page.waitForTimeout(SETTLED_MS);
    return use(page);
  });
  if ('problem' in outcome) throw new Error(hiddenProblems[outcome.problem]);
  return outcome.done;
}

/** Seconds of work of the page's main thread so far (Chromium's DevTools protocol, Performance.getMetrics). */
async function metricsOf(cdp: CDPSession): Promise<Record<string, number>> {
  const { metrics } = await cdp.send('Performance.getMetrics');
  return Object.fromEntries(metrics.map(({ name, value }) => [name, value]));
}

const started = async (page: Page): Promise<CDPSession> => {
  const cdp = await page.context().newCDPSession(page);
  // Time of the thread, not of the clock: what else the machine does is no work of ours.
  await cdp.send('Performance.enable', { timeDomain: 'threadTicks' });
  return cdp;
};

/** Work that something makes, ms. */
async function workOf(cdp: CDPSession, page: Page, act: () => Promise<void>, waitMs: number): Promise<number> {
  const before = (await metricsOf(cdp))['TaskDuration']!;
  await act();
  await page.waitForTimeout(waitMs);
  return 1000 * ((await metricsOf(cdp))['TaskDuration']! - before);
}

/** Waits until the page has nothing to do: a large caseload is gone through for some nine seconds after it is opened. */
async function quiet(cdp: CDPSession, page: Page): Promise<void> {
  for (let looks = 0, still = 0; looks < 120 && still < 4; looks += 1)
    still = (await workOf(cdp, page, async () => undefined, 500)) < QUIET_MS ? still + 1 : 0;
}

/** Work of a keystroke in Find, ms. */
async function keystroke(page: Page): Promise<number> {
  const cdp = await started(page);
  await quiet(cdp, page);
  await page.keyboard.press('Control+k');
  const box = page.getByRole('combobox', { name: 'Name, code or command' });
  await box.waitFor();
  const times: number[] = [];
  for (let n = 0; n < KEYSTROKES; n += 1) {
    await box.fill('');
    await page.waitForTimeout(300);
    times.push(await workOf(cdp, page, () => page.keyboard.press('i'), 300));
  }
  await page.keyboard.press('Escape');
  return median(times)!;
}

/** Longest task while a sentence is typed into the note of a visit, ms. */
async function typing(page: Page): Promise<number | null> {
  await openClient(page, ONE.code);
  await page.keyboard.press('Alt+7');
  const note = page.getByRole('textbox', { name: /next visit/i }).first();
  await note.click();
  await page.waitForTimeout(SETTLED_MS);
  await watchLongTasks(page);
  await page.keyboard.type('She brings the letter to her sister and the list for Saturday.', { delay: 60 });
  await page.waitForTimeout(SETTLED_MS);
  return longestTask(page);
}

/** Medians of the work to show the screens behind these keys, in turns, ms. */
async function showing(page: Page, keys: readonly string[]): Promise<number[]> {
  const cdp = await started(page);
  const times = keys.map((): number[] => []);
  for (let look = 0; look < LOOKS; look += 1)
    for (const [index, key] of keys.entries()) {
      await page.keyboard.press('Alt+1');
      await page.waitForTimeout(SETTLED_MS / 2);
      const work = await workOf(cdp, page, () => page.keyboard.press(key), SETTLED_MS);
      // The first look at a screen loads it.
      if (look > 0) times[index]!.push(work);
    }
  return times.map((each) => median(each)!);
}

/** What so many visits to two screens leave behind, after the garbage was collected. */
async function left(page: Page): Promise<{ nodes: number; listeners: number }> {
  const cdp = await started(page);
  const visit = async (times: number): Promise<void> => {
    for (let n = 0; n < times; n += 1)
      for (const key of ['Alt+2', 'Alt+8']) {
        await page.keyboard.press(key);
        await page.waitForTimeout(120);
      }
    await page.keyboard.press('Alt+1');
    await page.waitForTimeout(SETTLED_MS);
  };
  const count = async (): Promise<{ nodes: number; listeners: number }> => {
    for (let n = 0; n < 3; n += 1) await cdp.send('HeapProfiler.collectGarbage');
    const metrics = await metricsOf(cdp);
    return { nodes: metrics['Nodes']!, listeners: metrics['JSEventListeners']! };
  };
  await visit(5);
  const before = await count();
  await visit(VISITS);
  const after = await count();
  return { nodes: after.nodes - before.nodes, listeners: after.listeners - before.listeners };
}

/** Waits for a frame that shows `selector`, without what the driver would bring into the page to look for it. */
const drawn = (page: Page, selector: string): Promise<void> =>
  page.evaluate(
    (wanted) =>
      new Promise<void>((done) => {
        const look = () => requestAnimationFrame(document.querySelector(wanted) ? () => done() : look);
        look();
      }),
    selector,
  );

/** From the start of the browser to a blank page, and to the app's first screen, in turns, ms. */
async function starting(folder: string): Promise<number> {
  const executable = findBrowser();
  if (!executable) throw new Error(hiddenProblems['no-browser']);
  const headless = process.platform === 'linux' && !process.env['DISPLAY'] && !process.env['WAYLAND_DISPLAY'];
  const [bare, ours]: [number[], number[]] = [[], []];
  for (let n = 0; n <= STARTS; n += 1) {
    const empty = mkdtempSync(path.join(tmpdir(), 'bench-bare-'));
    let began = performance.now();
    const window = await launch({ executable, dataFolder: empty, size: { width: 1366, height: 768 }, headless });
    await window.page.goto('about:blank');
    await drawn(window.page, 'body');
    const bareMs = performance.now() - began;
    await window.context.close();
    await window.wipe();
    rmSync(empty, { recursive: true, force: true });
    began = performance.now();
    let oursMs = 0;
    const save = async () => ({ saved: false as const, name: null });
    await inHiddenWindow({ dataFolder: folder, save }, async ({ page }) => {
      await drawn(page, '[data-screen-title], h1');
      oursMs = performance.now() - began;
    });
    // The first ones warm the disk up.
    if (n > 0) [bare, ours].forEach((times, i) => times.push([bareMs, oursMs][i]!));
  }
  return median(ours)! / median(bare)!;
}

/** @returns a sentence where no window can be opened */
export async function deskTimes(): Promise<DeskTimes | string> {
  const folder = mkdtempSync(path.join(tmpdir(), 'bench-desk-'));
  const [few, many] = ['few', 'many'].map((name) => path.join(folder, name)) as [string, string];
  try {
    await writeCaseload(few, FEW, WEEKS);
    await writeCaseload(many, MANY, 3);
    const small = await inCaseload(few, async (page) => {
      const key = await keystroke(page);
      await openClient(page, ONE.code);
      const [progress, readBack, pages] = await showing(page, ['Alt+8', 'Alt+3', 'Alt+6']);
      return { key, progress: progress! / pages!, readBack: readBack! / pages!, ...(await left(page)) };
    });
    const large = await inCaseload(many, async (page) => {
      const key = await keystroke(page);
      await page.getByRole('button', { name: 'Caseload', exact: true }).first().click();
      await page.waitForTimeout(SETTLED_MS);
      const rows = await page.locator('tr').count();
      return { key, rows, typing: await typing(page) };
    });
    return {
      rows: large.rows,
      findRatio: large.key / small.key,
      typingMs: large.typing,
      progressRatio: small.progress,
      readBackRatio: small.readBack,
      nodesLeft: small.nodes,
      listenersLeft: small.listeners,
      startRatio: await starting(few),
    };
  } catch (error) {
    if (error instanceof Error && Object.values(hiddenProblems).includes(error.message)) return error.message;
    throw error;
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
