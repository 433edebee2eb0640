/**
 * Prints a page with words of its own on paper, by way of the engine and a print queue, and looks for them: as raw bytes
 * and as the text of every PDF, in all files that changed since, while it is printed, after it, and after a kill.
 */
import { randomBytes } from 'node:crypto';
import { chmodSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { findBrowser } from '../../../electron/browser/find.js';
import { startSession } from '../../../electron/browser/session.ts';
import { openClient } from '../../../electron/browser/walk.ts';
import { saveWithoutDialog } from '../../../electron/files/save-into.ts';
import { openBackend } from '../../../electron/open-backend.ts';
import { memoryFolder } from '../../../electron/window-profile.ts';
import { canQueue, startQueue } from './print-queue.ts';
import { changedSince, inEveryEncoding } from './search.ts';

export interface PrintReport {
  /** Pages that the queue got, and those among them that held the words. */
  printed: number;
  withWords: number;
  /** Searches while the page was on its way, each of all changed files. */
  searches: number;
  /** How long a copy lay in memory (never on a disk), in seconds. */
  copySeconds: number;
  faults: string[];
}

const appRoot = fileURLToPath(new URL('../../../', import.meta.url));
const pause = (ms: number) => new Promise((resolve) => setTimeout(resolve, ms));

async function textOf(bytes: Buffer): Promise<string> {
  const pdf = await getDocument({ data: new Uint8Array(bytes), verbosity: 0 }).promise;
  let text = '';
  for (let page = 1; page <= pdf.numPages; page++) {
    const { items } = await (await pdf.getPage(page)).getTextContent();
    for (const item of items) if ('str' in item) text += item.str;
  }
  await pdf.destroy();
  return text.replace(/\s+/g, '');
}

/** Whether a file holds the word as bytes, or is a PDF that shows it. */
async function holds(file: string, word: string): Promise<boolean> {
  try {
    const bytes = readFileSync(file);
    if (inEveryEncoding([word]).some((form) => bytes.includes(form)) || file.includes(word)) return true;
    return bytes.subarray(0, 5).toString('latin1') === '%PDF-' && (await textOf(bytes)).includes(word);
  } catch {
    return false;
  }
}

/** Null where there is no print queue to be had: it takes CUPS, and root to start one. */
export async function printTest(places: readonly string[] = ['/']): Promise<PrintReport | null> {
  if (!canQueue()) return null;
  const report: PrintReport = { printed: 0, withWords: 0, searches: 0, copySeconds: 0, faults: [] };
  const word = `qz${Array.from(randomBytes(9), (byte) => 'bcdfghjklmnpqrstvwxz'[byte % 20]).join('')}`;
  const base = mkdtempSync(path.join(tmpdir(), 'fairhand-printed-'));
  const folder = path.join(base, 'caseload');
  const queue = await startQueue();
  // The engine prints without a dialog, on the first printer.
  const executable = path.join(base, 'browser');
  writeFileSync(executable, `#!/bin/sh\nexec "${findBrowser()}" --kiosk-printing "$@"\n`);
  chmodSync(executable, 0o755);
  const before = process.env['CUPS_SERVER'];
  process.env['CUPS_SERVER'] = queue.server;
  const began = Date.now() - 1000;
  const inMemory = memoryFolder(folder) ?? '/none';
  try {
    const session = await startSession({
      dataFolder: folder,
      rendererFolder: path.join(appRoot, 'dist', 'renderer'),
      executable,
      size: { width: 1280, height: 800 },
      save: saveWithoutDialog(path.join(base, 'saved')),
      openBackend: (port, emit) =>
        openBackend({ folder, port, emit, shell: 'browser', appRoot, state: path.join(base, 'state') }),
    });
    const { page } = session;
    const ask = async (name: string, input: unknown): Promise<unknown> =>
      (JSON.parse(await session.backend.call(JSON.stringify({ name, input }))) as { value: unknown }).value;
    await page.getByRole('button', { name: 'Open the demo caseload' }).click();
    await page.getByRole('navigation', { name: 'Places' }).waitFor();
    const clients = (await ask('caseload.list', {})) as { id: string; code: string }[];
    const { id } = clients.find(({ code }) => code === 'Q-103')!;
    const { client } = (await ask('client.open', { clientId: id })) as { client: Record<string, unknown> };
    const { at: _at, by: _by, ...mine } = client;
    await ask('client.save', { ...mine, name: word, wants: word });
    await page.reload();
    await openClient(page, 'Q-103');
    await page.keyboard.press('Alt+6');
    await page.getByRole('radio', { name: /^Letter/ }).click();
    await page.waitForTimeout(2000);
    await page
      .getByRole('button', { name: /^Print/ })
      .first()
      .click();
    const asked = Date.now();
    let lastCopy = asked;
    for (let still = 0; still < 3 && Date.now() - asked < 120_000;) {
      const files = changedSince(places, began).filter((file) => !file.startsWith(queue.folder));
      report.searches++;
      const found: string[] = [];
      for (const file of files) if (await holds(file, word)) found.push(file);
      const disk = found.filter((file) => !file.startsWith(`${inMemory}/`));
      for (const file of disk) report.faults.push(`on its way to the printer: ${file.replaceAll(word, '(word)')}`);
      if (found.length > disk.length) lastCopy = Date.now();
      // It is over when the printer has it and no copy was found three times.
      still = queue.printed().length > 0 && found.length === 0 ? still + 1 : 0;
      await pause(1500);
    }
    report.copySeconds = Math.round((lastCopy - asked) / 1000);
    if (Date.now() - asked >= 120_000)
      report.faults.push('after two minutes a copy was still there, or nothing printed');
    for (const file of queue.printed()) {
      report.printed++;
      if (await holds(file, word)) report.withWords++;
    }
    if (report.withWords === 0) report.faults.push('the printer did not get the words');
    await session.close();
    for (const file of changedSince(places, began).filter((each) => !each.startsWith(queue.folder)))
      if (await holds(file, word)) report.faults.push(`after it: ${file.replaceAll(word, '(word)')}`);
  } finally {
    if (before === undefined) delete process.env['CUPS_SERVER'];
    else process.env['CUPS_SERVER'] = before;
    queue.stop();
    rmSync(base, { recursive: true, force: true, maxRetries: 5 });
  }
  report.faults = [...new Set(report.faults)];
  return report;
}
