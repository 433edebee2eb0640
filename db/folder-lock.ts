/**
 * One open caseload a folder, held by the operating system: an exclusive transaction on a tiny file of its own.
 * It ends with the process, however that ends, so there is nothing stale to clean up; worker threads of the same
 * Fairhand can still read the caseload file itself.
 */
import Database from 'better-sqlite3';
import { closeSync, openSync } from 'node:fs';
import { lockFile } from './files.ts';

export interface FolderLock {
  release(): void;
}

/** Null when another open caseload holds the folder. @throws SQLite and file system errors */
export function takeFolderLock(folder: string): FolderLock | null {
  return holdFile(lockFile(folder));
}

/** Holds a lock file of any name; null when another process has it. @throws SQLite and file system errors */
export function holdFile(file: string): FolderLock | null {
  closeSync(openSync(file, 'a', 0o600));
  const db = new Database(file, { timeout: 0 });
  try {
    // Nothing is ever written into it: no journal file needed.
    db.pragma('journal_mode = MEMORY');
    db.exec('BEGIN EXCLUSIVE');
  } catch (error) {
    db.close();
    const code = (error as { code?: string }).code ?? '';
    if (code.startsWith('SQLITE_BUSY')) return null;
    throw error;
  }
  return {
    release() {
      if (db.open) db.close();
    },
  };
}
