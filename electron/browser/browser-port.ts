/** The browser shell's dialogs: the browser's own pickers, opened in the window; bytes cross the pipe in slices. */
import { randomUUID } from 'node:crypto';
import type { JSHandle, Page } from 'playwright-core';
import type { SaveWithoutDialog } from '../files/save-into.ts';
import { plainFileName } from '../files/save-into.ts';
import type { OpenedFile, OpenOptions, PageSize, Saved, SaveOptions, ShellPort } from '../shell-port.ts';

/** Bytes of one slice over the pipe: large enough to be fast, small enough to keep the window answering. */
const SLICE = 3 * 1024 * 1024;

export interface BrowserPortOptions {
  /**
   * Takes every saved file without a dialog, where nobody can answer one: the demo visit, commands, end-to-end
   * tests. Null: the therapist picks the place.
   */
  save: SaveWithoutDialog | null;
}

/** The dialogs of this window. */
export function browserPort(page: Page, options: BrowserPortOptions): ShellPort {
  return {
    chooseOpen: (wanted) => chooseOpen(page, wanted),
    chooseSave: (save) => (options.save ?? ((asked) => chooseSave(page, asked)))(save),
    printPdf: ({ pageSize }) => printPdf(page, pageSize),
    async printPaper() {
      // Not awaited in the page: print() blocks it until the dialog is closed.
      await page.evaluate(() => void setTimeout(() => window.print(), 0));
    },
    // The browser itself asks whether this page may use the camera; a private window forgets the answer at its end.
    async allowCameraOnce() {},
    keyStore: null,
    close: () => void page.close().catch(() => undefined),
  };
}

async function chooseOpen(page: Page, wanted: OpenOptions): Promise<OpenedFile | null> {
  const picked = await page.evaluateHandle(
    (accept) =>
      new Promise<File | null>((resolve) => {
        const input = document.createElement('input');
        input.type = 'file';
        input.accept = accept;
        input.addEventListener('change', () => resolve(input.files?.[0] ?? null));
        input.addEventListener('cancel', () => resolve(null));
        input.click();
      }),
    wanted.endings.map((ending) => `.${ending}`).join(','),
  );
  const about = await picked.evaluate((file) => (file ? { name: file.name, size: file.size } : null));
  if (!about) return null;
  return {
    token: randomUUID(),
    name: about.name,
    async read() {
      if (about.size > wanted.maxBytes) throw new RangeError('The file is larger than the cap.');
      const bytes = await readSlices(picked as JSHandle<File>, about.size);
      await picked.dispose();
      return bytes;
    },
  };
}

async function readSlices(file: JSHandle<File>, size: number): Promise<Uint8Array> {
  const bytes = new Uint8Array(size);
  for (let from = 0; from < size; from += SLICE) {
    const encoded = await file.evaluate(
      (whole, [start, end]) =>
        new Promise<string>((resolve, reject) => {
          const reader = new FileReader();
          reader.onload = () => resolve(String(reader.result));
          reader.onerror = () => reject(reader.error);
          reader.readAsDataURL(whole.slice(start, end));
        }),
      [from, Math.min(size, from + SLICE)] as const,
    );
    bytes.set(Buffer.from(encoded.slice(encoded.indexOf(',') + 1), 'base64'), from);
  }
  return bytes;
}

/** What the page needs of the File System Access API; TypeScript's own list does not have the picker. */
interface SavePicker {
  showSaveFilePicker(options: { suggestedName: string }): Promise<FileSystemFileHandle>;
}

async function chooseSave(page: Page, save: SaveOptions): Promise<Saved> {
  const target = await page.evaluateHandle(async (suggestedName) => {
    try {
      const file = await (window as unknown as SavePicker).showSaveFilePicker({ suggestedName });
      return { name: file.name, out: await file.createWritable() };
    } catch (error) {
      if (error instanceof DOMException && error.name === 'AbortError') return null;
      throw error;
    }
  }, plainFileName(save.suggestedName));
  const name = await target.evaluate((open) => open?.name ?? null);
  if (name === null) return { saved: false, name: null };
  for (let from = 0; from < save.bytes.byteLength; from += SLICE) {
    const slice = Buffer.from(save.bytes.subarray(from, from + SLICE)).toString('base64');
    await target.evaluate(async (open, encoded) => {
      await open?.out.write(Uint8Array.from(atob(encoded), (char) => char.charCodeAt(0)));
    }, slice);
  }
  await target.evaluate((open) => open?.out.close());
  await target.dispose();
  return { saved: true, name };
}

async function printPdf(page: Page, pageSize: PageSize): Promise<Uint8Array> {
  const pdf = await page.pdf({
    format: pageSize,
    preferCSSPageSize: true,
    printBackground: true,
    tagged: true,
    outline: true,
  });
  return new Uint8Array(pdf);
}
