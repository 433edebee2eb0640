/** The real window where nobody sees it: for commands that print, and for the demo visit without a display. */
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Page } from 'playwright-core';
import type { Backend } from '../backend.ts';
import type { Envelope } from '../contract/envelope.ts';
import { takeLock } from '../files/lock.ts';
import { openBackend } from '../open-backend.ts';
import type { Saved, SaveOptions } from '../shell-port.ts';
import { findBrowser } from './find.js';
import type { Session, SessionOptions } from './session.ts';
import { startSession } from './session.ts';

const appRoot = fileURLToPath(new URL('../../', import.meta.url));

/** Why no hidden window could be opened. */
export type HiddenProblem = 'no-browser' | 'in-use' | 'not-writable' | 'no-window';

export interface HiddenOptions {
  dataFolder: string;
  /** Takes what the page saves. */
  save(save: SaveOptions): Promise<Saved>;
  size?: { width: number; height: number };
}

export interface HiddenWindow {
  page: Page;
  /** Asks the backend as the page does. @throws RequestRefused */
  ask(name: string, input: unknown): Promise<unknown>;
}

/** A request that was refused: `code` is one of the contract's messages. */
export class RequestRefused extends Error {
  readonly code: string;
  readonly detail: string | undefined;
  constructor(code: string, detail: string | undefined) {
    super(code);
    this.code = code;
    this.detail = detail;
  }
}

async function ask(backend: Backend, name: string, input: unknown): Promise<unknown> {
  const answer = JSON.parse(await backend.call(JSON.stringify({ name, input }))) as Envelope;
  if (answer.ok) return answer.value;
  throw new RequestRefused(answer.code, answer.detail);
}

/** The window, or null when the browser does not start (its own words would be a page of traces). */
async function openSession(options: SessionOptions): Promise<Session | null> {
  try {
    return await startSession(options);
  } catch (error) {
    if (process.env['FAIRHAND_DEBUG'] === '1') process.stderr.write(`${String(error)}\n`);
    return null;
  }
}

/**
 * Opens the window on a caseload folder, runs `use`, closes everything.
 * @returns what `use` answers, or why there was no window
 */
export async function inHiddenWindow<T>(
  options: HiddenOptions,
  use: (window: HiddenWindow) => Promise<T>,
): Promise<{ done: T } | { problem: HiddenProblem }> {
  const executable = findBrowser();
  if (!executable) return { problem: 'no-browser' };
  let lock;
  try {
    lock = takeLock(options.dataFolder);
  } catch {
    return { problem: 'not-writable' };
  }
  if (!lock) return { problem: 'in-use' };
  try {
    const session = await openSession({
      dataFolder: options.dataFolder,
      rendererFolder: path.join(appRoot, 'dist', 'renderer'),
      executable,
      size: options.size ?? { width: 1366, height: 768 },
      headless: process.platform === 'linux' && !process.env['DISPLAY'] && !process.env['WAYLAND_DISPLAY'],
      save: options.save,
      openBackend: (port, emit) => openBackend({ folder: options.dataFolder, port, emit, shell: 'browser', appRoot }),
    });
    if (!session) return { problem: 'no-window' };
    try {
      return { done: await use({ page: session.page, ask: (name, input) => ask(session.backend, name, input) }) };
    } finally {
      await session.close();
    }
  } finally {
    lock.release();
  }
}

/** A sentence for each problem. */
export const hiddenProblems: Readonly<Record<HiddenProblem, string>> = {
  'no-browser':
    'Printing needs a Chromium, Chrome or Edge, and none was found. Nothing was written. Install one of them and try again.',
  'in-use': 'This caseload is open in a window of Fairhand. Nothing was written. Close that window, or print from it.',
  'no-window':
    'The browser that shows the window did not start. Nothing was written. Check that Chromium opens by itself, then try again.',
  'not-writable':
    'Fairhand cannot write into this caseload folder. Nothing was changed. Check the folder after --data.',
};
