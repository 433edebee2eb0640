/** Names inside the caseload folder, and writing that survives a power cut as far as the system's fsync does. */
import {
  closeSync,
  existsSync,
  fsyncSync,
  mkdirSync,
  openSync,
  renameSync,
  rmSync,
  statSync,
  writeSync,
} from 'node:fs';
import path from 'node:path';

export const caseloadFile = (folder: string): string => path.join(folder, 'caseload.db');
export const keyFile = (folder: string): string => path.join(folder, 'caseload.key.json');
/** A second copy of the key file: one bad sector must not cost the whole caseload. */
export const keyFileCopy = (folder: string): string => path.join(folder, 'caseload.key-copy.json');
/** Names the laptop in hand-overs; taken away when the caseload beside it is replaced. */
export const laptopFile = (folder: string): string => path.join(folder, 'caseload.laptop');
export const lockFile = (folder: string): string => path.join(folder, 'caseload.lock');
/** Encrypted copies kept before each migration. */
export const copiesFolder = (folder: string): string => path.join(folder, 'copies');

/** The main file with its companions; they are moved together or not at all. */
export const companions = (file: string): string[] => [file, `${file}-wal`, `${file}-shm`];

/**
 * Makes a folder and those above it. Health records are nobody else's: folders 0700, files 0600.
 * One step at a time: Node's own recursive way never ends where the system takes no folders (/proc).
 * @throws when one of them cannot be made
 */
export function makeFolder(folder: string): void {
  if (statSync(folder, { throwIfNoEntry: false })?.isDirectory()) return;
  const above = path.dirname(folder);
  if (above !== folder && !existsSync(above)) makeFolder(above);
  mkdirSync(folder, { mode: 0o700 });
}

/** fsync of the folder itself, so that a rename in it is kept. Windows cannot and does not need to. */
export function syncFolder(folder: string): void {
  if (process.platform === 'win32') return;
  const handle = openSync(folder, 'r');
  try {
    fsyncSync(handle);
  } finally {
    closeSync(handle);
  }
}

/** fsync of a file that was written by somebody else (SQLite, a stream). */
export function syncFile(file: string): void {
  const handle = openSync(file, 'r+');
  try {
    fsyncSync(handle);
  } finally {
    closeSync(handle);
  }
}

/** An empty file that only its user may read; SQLite fills it and gives its -wal and -shm the same mode. */
export function touchPrivate(file: string): void {
  closeSync(openSync(file, 'w', 0o600));
}

/** Renames a finished file to its final name, durably. */
export function settle(temporary: string, file: string): void {
  syncFile(temporary);
  renameSync(temporary, file);
  syncFolder(path.dirname(file));
}

/** Replaces a small file whole: at any moment the old or the new content is there, never half of one. */
export function writeDurably(file: string, content: string): void {
  const temporary = `${file}.${process.pid}.part`;
  const handle = openSync(temporary, 'w', 0o600);
  try {
    writeSync(handle, content);
    fsyncSync(handle);
  } catch (error) {
    closeSync(handle);
    rmSync(temporary, { force: true });
    throw error;
  }
  closeSync(handle);
  renameSync(temporary, file);
  syncFolder(path.dirname(file));
}
