/**
 * Starts the app in its own window on a caseload folder of the test's own. The test talks to the real window, the
 * real services and a real encrypted file; only saved files go to `saveFolder` instead of a dialog.
 */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { test as base } from '@playwright/test';
import type { Page } from '@playwright/test';
import { findBrowser } from '../../electron/browser/find.js';
import { saveWithoutDialog } from '../../electron/browser/port.ts';
import { startSession } from '../../electron/browser/session.ts';
import type { Session } from '../../electron/browser/session.ts';
import { openBackend } from '../../electron/open-backend.ts';

const appRoot = fileURLToPath(new URL('../../', import.meta.url));

export interface LaunchOptions {
  /** Opens the demo caseload (asks for it as the first-start screen does). */
  demo?: boolean;
  /** A folder with a caseload in it; else a new empty one that is removed afterwards. */
  dataFolder?: string;
  /** Window size in CSS pixels; 1280 x 720 is the small laptop. */
  size?: { width: number; height: number };
  /** The clock of the shell, for tests of dates and idle times. */
  now?: () => Date;
}

export interface LaunchedApp {
  page: Page;
  session: Session;
  dataFolder: string;
  /** Where saved files land. */
  saveFolder: string;
  close(): Promise<void>;
}

/** Passphrase of the caseloads that tests create. */
export const PASSPHRASE = 'calm river blue lantern';

export async function launchApp(options: LaunchOptions = {}): Promise<LaunchedApp> {
  const own = mkdtempSync(path.join(tmpdir(), 'fairhand-window-'));
  const dataFolder = options.dataFolder ?? path.join(own, 'caseload');
  const saveFolder = path.join(own, 'saved');
  const executable = findBrowser();
  if (!executable) throw new Error('No Chromium-family browser is installed; npm test installs one on Debian as root.');
  const session = await startSession({
    dataFolder,
    rendererFolder: path.join(appRoot, 'dist', 'renderer'),
    executable,
    size: options.size ?? { width: 1280, height: 720 },
    save: saveWithoutDialog(saveFolder),
    openBackend: (port, emit) =>
      openBackend({
        folder: dataFolder,
        port,
        emit,
        shell: 'browser',
        appRoot,
        ...(options.now && { now: options.now }),
      }),
  });
  const page = session.page as Page;
  if (options.demo) {
    const opened = JSON.parse(await session.backend.call(JSON.stringify({ name: 'app.openDemo', input: {} }))) as {
      ok: boolean;
    };
    if (!opened.ok) throw new Error(`The demo caseload did not open: ${JSON.stringify(opened)}`);
    await page.reload();
  }
  return {
    page,
    session,
    dataFolder,
    saveFolder,
    async close() {
      await session.close();
      rmSync(own, { recursive: true, force: true });
    },
  };
}

/** `test` with the app already open on an empty caseload folder: `test('…', async ({ app }) => { app.page … })`. */
export const test = base.extend<{ app: LaunchedApp; demoApp: LaunchedApp }>({
  app: async ({}, use) => {
    const app = await launchApp();
    await use(app);
    await app.close();
  },
  demoApp: async ({}, use) => {
    const app = await launchApp({ demo: true });
    await use(app);
    await app.close();
  },
});
export { expect } from '@playwright/test';
