/**
 * One open caseload a folder, held by the operating system: an exclusive transaction on a tiny file of its own.
 * It ends with the process, however that ends, so there is nothing stale to clean up; worker threads of the same
 * Fairhand can still read the caseload file itself.
 */
import Database from 'better-sqlite3';
import { chmodSync } from 'node:fs';
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
  const db = new Database(file, { timeout: 0 });
  try {
    db.pragma('journal_mode = DELETE');
    db.exec('BEGIN EXCLUSIVE');
  } catch (error) {
    db.close();
    const code = (error as { code?: string }).code ?? '';
    if (code.startsWith('SQLITE_BUSY')) return null;
    throw error;
  }
  if (process.platform !== 'win32') chmodSync(file, 0o600);
  return {
    release() {
      if (db.open) db.close();
    },
  };
}
