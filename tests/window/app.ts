/**
 * Starts the app in its own window on a caseload folder of the test's own. The test talks to the real window, the
 * real services and a real encrypted file; only saved files go to `saveFolder` instead of a dialog.
 */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { _electron as electron, test as base } from '@playwright/test';
import type { Page } from '@playwright/test';
import { findBrowser } from '../../electron/browser/find.js';
import { handedFile } from '../../electron/files/handed-file.ts';
import { saveWithoutDialog } from '../../electron/files/save-into.ts';
import { startSession } from '../../electron/browser/session.ts';
import type {} from '../../electron/contract/ask.ts';
import { openBackend } from '../../electron/open-backend.ts';

const appRoot = fileURLToPath(new URL('../../', import.meta.url));

export interface LaunchOptions {
  /** Opens the demo caseload (asks for it as the first-start screen does). */
  demo?: boolean;
  /** A folder with a caseload in it; else a new empty one that is removed afterwards. */
  dataFolder?: string;
  /** A file that was double-clicked: the app is started with it. */
  handed?: string;
  /** Window size in CSS pixels; 1280 x 720 is the small laptop. */
  size?: { width: number; height: number };
  /** The clock of the shell, for tests of dates and idle times. */
  now?: () => Date;
  /** The code with which every save is refused now; null = saves go on. As in a folder gone read-only, or a full disk. */
  refuseSaves?: () => string | null;
}

export interface LaunchedApp {
  page: Page;
  /** Asks the backend as the page does: JSON in, envelope out. */
  call(json: string): Promise<string>;
  /** Hands bytes in as the page does; answers their token. */
  stage(bytes: Uint8Array): Promise<string>;
  /** Asks the backend; answers the value, or throws with the code. */
  ask(name: string, input?: unknown): Promise<unknown>;
  dataFolder: string;
  /** Where saved files land. */
  saveFolder: string;
  close(): Promise<void>;
  /** Ends the window and leaves the folder, for a test that starts again on it. */
  leave(): Promise<void>;
}

/** Passphrase of the caseloads that tests create. */
export const PASSPHRASE = 'calm river blue lantern';

/** Electron's program when `npm run test:electron` runs these tests, else undefined: the browser shell. */
const electronProgram = process.env['FAIRHAND_TEST_SHELL'];

interface Opened {
  page: Page;
  close(): Promise<void>;
}

async function openInBrowser(dataFolder: string, saveFolder: string, options: LaunchOptions): Promise<Opened> {
  const executable = findBrowser();
  if (!executable) throw new Error('No Chromium-family browser is installed; npm test installs one on Debian as root.');
  const { now, refuseSaves } = options;
  const session = await startSession({
    dataFolder,
    rendererFolder: path.join(appRoot, 'dist', 'renderer'),
    executable,
    size: options.size ?? { width: 1280, height: 720 },
    save: saveWithoutDialog(saveFolder),
    openBackend: (port, emit) => {
      const backend = openBackend({
        folder: dataFolder,
        port,
        emit,
        shell: 'browser',
        appRoot,
        state: path.join(dataFolder, '..', 'state'),
        ...(now && { now }),
      });
      const handed = options.handed === undefined ? null : handedFile(options.handed, dataFolder);
      if (handed) backend.offer(handed);
      const call = async (json: string): Promise<string> => {
        const code = refuseSaves?.();
        const { name } = JSON.parse(json) as { name: string };
        return code && /\.save$|^fact\.remove$/.test(name) ? JSON.stringify({ ok: false, code }) : backend.call(json);
      };
      return refuseSaves ? { ...backend, call } : backend;
    },
  });
  return { page: session.page as Page, close: () => session.close() };
}

async function openInElectron(dataFolder: string, saveFolder: string, program: string, handed = ''): Promise<Opened> {
  const args = [path.join(appRoot, 'dist/app/electron/desktop/start.js'), '--data', dataFolder];
  if (handed) args.push(handed);
  const app = await electron.launch({
    executablePath: program,
    args: process.getuid?.() === 0 ? ['--no-sandbox', ...args] : args,
    env: { ...process.env, FAIRHAND_SAVE_DIR: saveFolder } as Record<string, string>,
  });
  return { page: await app.firstWindow(), close: () => app.close() };
}

/** Runs in the page: posts bytes as a picked or pasted picture would be. */
async function sendBytes(encoded: string): Promise<string> {
  const body = Uint8Array.from(atob(encoded), (char) => char.charCodeAt(0));
  const answer = await fetch('/blob', { method: 'POST', body });
  return ((await answer.json()) as { token: string }).token;
}

export async function launchApp(options: LaunchOptions = {}): Promise<LaunchedApp> {
  const own = mkdtempSync(path.join(tmpdir(), 'fairhand-window-'));
  const dataFolder = options.dataFolder ?? path.join(own, 'caseload');
  const saveFolder = path.join(own, 'saved');
  if (electronProgram && (options.now || options.refuseSaves))
    base.skip(true, 'the services of a running Electron cannot be changed');
  const { page, close } = electronProgram
    ? await openInElectron(dataFolder, saveFolder, electronProgram, options.handed)
    : await openInBrowser(dataFolder, saveFolder, options);
  const call = (json: string): Promise<string> => page.evaluate((request) => globalThis.fairhand.call(request), json);
  const ask = async (name: string, input: unknown = {}): Promise<unknown> => {
    const answer = JSON.parse(await call(JSON.stringify({ name, input }))) as
      { ok: true; value: unknown } | { ok: false; code: string };
    if (!answer.ok) throw new Error(`${name} was refused: ${answer.code}`);
    return answer.value;
  };
  let hasLeft = false;
  const leave = async (): Promise<void> => {
    if (!hasLeft) await close();
    hasLeft = true;
  };
  if (options.demo) {
    await ask('app.openDemo');
    await page.reload();
  }
  return {
    page,
    call,
    stage: (bytes) => page.evaluate(sendBytes, Buffer.from(bytes).toString('base64')),
    ask,
    dataFolder,
    saveFolder,
    leave,
    async close() {
      await leave();
      rmSync(own, { recursive: true, force: true });
    },
  };
}

/** Opens a client as Find does: by typing the name. */
export async function openClient(page: Page, name: string): Promise<void> {
  await page.getByRole('banner').waitFor();
  await page.keyboard.press('Control+k');
  await page.getByRole('combobox', { name: 'Name, code or command' }).fill(name);
  await page.getByRole('option', { name }).first().waitFor();
  await page.keyboard.press('Enter');
  await page.getByRole('main').getByRole('heading', { level: 1 }).first().waitFor();
}

/** Shows one part of the record: 'This visit', 'Whole record', 'What changed'. */
export const showPart = (page: Page, part: string | RegExp): Promise<void> =>
  page.getByRole('group', { name: 'Show' }).getByRole('button', { name: part, exact: true }).click();

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
