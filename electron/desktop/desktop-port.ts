/** Electron's dialogs and printing. Paths stay here; the window only ever sees a name. */
import { randomUUID } from 'node:crypto';
import { readFile, rename, rm, stat, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { dialog } from 'electron';
import type { BrowserWindow } from 'electron';
import type { SaveWithoutDialog } from '../files/save-into.ts';
import type { OpenedFile, OpenOptions, Saved, SaveOptions, ShellPort } from '../shell-port.ts';
import type { CameraTicket } from '../window-policy.ts';
import { desktopKeyStore } from './electron-key-store.ts';

/** A ticket that was not used closes after this long, in milliseconds. */
const CAMERA_MS = 120_000;

/** @param save takes every saved file without a dialog; null: the therapist picks the place */
export function desktopPort(
  window: () => BrowserWindow,
  ticket: CameraTicket,
  save: SaveWithoutDialog | null,
): ShellPort {
  return {
    chooseOpen: (options) => chooseOpen(window(), options),
    chooseSave: (options) => (save ?? ((asked) => chooseSave(window(), asked)))(options),
    async printPdf({ pageSize }) {
      const pdf = await window().webContents.printToPDF({
        pageSize,
        preferCSSPageSize: true,
        printBackground: true,
        generateTaggedPDF: true,
        generateDocumentOutline: true,
      });
      return new Uint8Array(pdf);
    },
    printPaper: () =>
      new Promise((resolve, reject) => {
        window().webContents.print({ silent: false, printBackground: true }, (done, reason) => {
          // A closed dialog is an answer, not a failure.
          if (done || reason === 'Print job canceled' || reason === 'cancelled') resolve();
          else reject(new Error('The system did not print.'));
        });
      }),
    async allowCameraOnce() {
      ticket.open = true;
      setTimeout(() => (ticket.open = false), CAMERA_MS).unref();
    },
    keyStore: desktopKeyStore(process.platform),
    close: () => window().close(),
  };
}

async function chooseOpen(window: BrowserWindow, options: OpenOptions): Promise<OpenedFile | null> {
  const picked = await dialog.showOpenDialog(window, {
    title: options.title,
    properties: ['openFile', 'dontAddToRecent'],
    filters: options.endings.length > 0 ? [{ name: options.title, extensions: [...options.endings] }] : [],
  });
  const file = picked.filePaths[0];
  if (picked.canceled || file === undefined) return null;
  return {
    token: randomUUID(),
    name: path.basename(file),
    async read() {
      const { size } = await stat(file);
      if (size > options.maxBytes) throw new RangeError('The file is larger than the cap.');
      return new Uint8Array(await readFile(file));
    },
  };
}

async function chooseSave(window: BrowserWindow, options: SaveOptions): Promise<Saved> {
  const picked = await dialog.showSaveDialog(window, {
    defaultPath: path.basename(options.suggestedName),
    properties: ['dontAddToRecent', 'createDirectory', 'showOverwriteConfirmation'],
  });
  if (picked.canceled || !picked.filePath) return { saved: false, name: null };
  // Written beside its place and then moved: a full disk never leaves half a page under the chosen name.
  const part = `${picked.filePath}.part`;
  try {
    await writeFile(part, options.bytes);
    await rename(part, picked.filePath);
  } catch (error) {
    await rm(part, { force: true });
    throw error;
  }
  return { saved: true, name: path.basename(picked.filePath) };
}
