/**
 * Saving where nobody can answer a dialog: the demo visit, commands and end-to-end tests, in both shells.
 */
import { existsSync, mkdirSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import type { Saved, SaveOptions } from '../shell-port.ts';

export type SaveWithoutDialog = (save: SaveOptions) => Promise<Saved>;

/** What to do with saved files when FAIRHAND_SAVE_DIR names a folder for them; null when it does not. */
export function saveWithoutDialog(folder: string | undefined): SaveWithoutDialog | null {
  return folder ? async (save) => saveInto(folder, save) : null;
}

/** Makes a saved file's name harmless on every system; it never leaves its folder. */
export function plainFileName(name: string): string {
  const plain = Array.from(path.basename(name.replaceAll('\\', '/')), (char) =>
    char < ' ' || '<>:"/|?*'.includes(char) ? '-' : char,
  )
    .join('')
    .replace(/^\.+/, '');
  return plain === '' ? 'fairhand' : plain;
}

/** A name that does not overwrite: sheet.pdf, sheet-2.pdf, … */
export function freeName(name: string, taken: (name: string) => boolean): string {
  if (!taken(name)) return name;
  const ending = path.extname(name);
  const stem = name.slice(0, name.length - ending.length);
  for (let number = 2; ; number++) {
    const next = `${stem}-${number}${ending}`;
    if (!taken(next)) return next;
  }
}

/** Writes into the named folder without a dialog and without overwriting. */
export function saveInto(folder: string, save: SaveOptions): Saved {
  mkdirSync(folder, { recursive: true });
  const name = freeName(plainFileName(save.suggestedName), (taken) => existsSync(path.join(folder, taken)));
  writeFileSync(path.join(folder, name), save.bytes, { flag: 'wx' });
  return { saved: true, name };
}
