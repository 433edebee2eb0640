/** One window in the installed Chromium, from start to close: what main.ts, the demo visit and the tests share. */
import type { BrowserContext, Page } from 'playwright-core';
import type { Backend } from '../backend.ts';
import type { ShellPort } from '../shell-port.ts';
import { leaveMemoryOutOfDumps } from '../no-dumps.ts';
import { BROWSER_ORIGIN } from '../window-policy.ts';
import type { WindowSize } from '../window-size.ts';
import { bind, emit } from './bind.ts';
import type { BrowserPortOptions } from './browser-port.ts';
import { browserPort } from './browser-port.ts';
import { launch } from './launch.ts';
import { serve } from './serve.ts';

export interface SessionOptions {
  /** The caseload folder; it must be locked by the caller. */
  dataFolder: string;
  /** Absolute folder of the built window. */
  rendererFolder: string;
  /** The Chromium-family program. */
  executable: string;
  size: WindowSize;
  headless?: boolean;
  /** Takes saved files without a dialog; null: the therapist picks the place. */
  save: BrowserPortOptions['save'];
  /** Opens the caseload behind the contract. */
  openBackend(port: ShellPort, emit: (json: string) => void): Backend | Promise<Backend>;
}

export interface Session {
  context: BrowserContext;
  page: Page;
  backend: Backend;
  /**
   * Resolves when the window is gone, the caseload closed and the browser's own files wiped. 'crashed': the page broke
   * down; everything saved is safe and the window may be opened again.
   */
  closed: Promise<'closed' | 'crashed'>;
  /** Closes the window and waits for `closed`. */
  close(): Promise<void>;
}

/**
 * Opens the window and shows the page.
 * @throws when the browser does not start or the caseload cannot be opened; nothing is left behind then
 */
export async function startSession(options: SessionOptions): Promise<Session> {
  leaveMemoryOutOfDumps();
  let opened: Backend | null = null;
  const { context, page, wipe } = await launch(options, async (context, page) => {
    const port = browserPort(page, { save: options.save });
    const backend = await options.openBackend(port, (json) => void emit(page, json));
    opened = backend;
    await Promise.all([
      serve(context, page, backend, options.rendererFolder),
      bind(context, page, (json) => backend.call(json)),
    ]);
  }).catch(async (error: unknown) => {
    await opened?.close();
    throw error;
  });
  const backend = opened!;
  const closed = new Promise<'closed' | 'crashed'>((resolve, reject) => {
    let crashed = false;
    // A page that broke down shows the browser's own words and answers nothing: its window is closed.
    page.on('crash', () => {
      crashed = true;
      void page.close().catch(() => undefined);
    });
    // Whether a page with something unsaved closes is asked by the browser itself; nothing else opens a dialog.
    page.on('dialog', (dialog) => {
      if (dialog.type() !== 'beforeunload') void dialog.dismiss().catch(() => undefined);
    });
    // The page's own close is the sign; the browser process ends later or, on some systems, not at all.
    page.on('close', () => {
      finish(context, backend, wipe).then(() => resolve(crashed ? 'crashed' : 'closed'), reject);
    });
  });
  // The fonts may still be on their way: the first screen does not wait for them.
  await page.goto(`${BROWSER_ORIGIN}/index.html`, { waitUntil: 'domcontentloaded' });
  return {
    context,
    page,
    backend,
    closed,
    async close() {
      await page.close().catch(() => undefined);
      await closed;
    },
  };
}

async function finish(context: BrowserContext, backend: Backend, wipe: () => Promise<void>): Promise<void> {
  try {
    await backend.close();
  } finally {
    await context.close().catch(() => undefined);
    await wipe();
  }
}

/** Brings the window to the front, for a second start on the same folder. */
export async function comeForward(page: Page): Promise<void> {
  await page.bringToFront().catch(() => undefined);
}

/** How often the window's size is looked at, in milliseconds. */
const LOOK_MS = 4000;

/** Reports the window's size while it changes; Chromium tells nobody when its frame is dragged. */
export function watchSize(page: Page, changed: (size: WindowSize) => void): void {
  let last = '';
  const look = async () => {
    const size = await page.evaluate(() => ({ width: outerWidth, height: outerHeight }));
    if (JSON.stringify(size) === last) return;
    last = JSON.stringify(size);
    changed(size);
  };
  const timer = setInterval(() => void look().catch(() => undefined), LOOK_MS);
  timer.unref();
  page.on('close', () => clearInterval(timer));
}
