/**
 * One window of Fairhand on a caseload folder. A second start asks the first to come forward and ends.
 * The lock is held by the operating system and ends with the process; the request to come forward is a file, so
 * that nothing listens on a socket.
 */
import { readFileSync, renameSync, rmSync, statSync, watch, writeFileSync } from 'node:fs';
import path from 'node:path';
import { makeFolder } from '../../db/files.ts';
import { holdFile } from '../../db/folder-lock.ts';

const LOCK = 'window.lock';
const FORWARD = 'come-forward';

/** A lock that is held until `release`. */
export interface Lock {
  /** Calls back when a second start asks this one to come forward, with the file that it was started with, or null. */
  onForward(listener: (file: string | null) => void): void;
  /** Gives the folder free. Safe to call twice. */
  release(): void;
}

/**
 * Takes the folder (making it where it is missing), or answers null when another window has it.
 * @throws when the folder cannot be made or written
 */
export function takeLock(folder: string): Lock | null {
  makeFolder(folder);
  const hold = holdFile(path.join(folder, LOCK));
  if (!hold) return null;
  const note = path.join(folder, FORWARD);
  rmSync(note, { force: true });
  let stop = () => undefined as void;
  return {
    onForward(listener) {
      const watcher = watch(folder, { persistent: false }, (_event, name) => {
        if (name !== FORWARD || !statSync(note, { throwIfNoEntry: false })) return;
        const file = readFileSync(note, 'utf8');
        rmSync(note, { force: true });
        listener(file === '' ? null : file);
      });
      watcher.on('error', () => watcher.close());
      stop = () => watcher.close();
    },
    release() {
      stop();
      rmSync(note, { force: true });
      hold.release();
    },
  };
}

/** True when a window has this folder open. */
export function isTaken(folder: string): boolean {
  const file = path.join(folder, LOCK);
  if (!statSync(file, { throwIfNoEntry: false })) return false;
  const hold = holdFile(file);
  hold?.release();
  return hold === null;
}

/** Asks the window that has this folder to come forward, and to offer a file. */
export function askForward(folder: string, file: string | null = null): void {
  const part = path.join(folder, `${FORWARD}.${process.pid}.part`);
  writeFileSync(part, file ?? '', { mode: 0o600 });
  renameSync(part, path.join(folder, FORWARD));
}
