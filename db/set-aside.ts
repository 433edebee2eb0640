/**
 * Replacing the caseload file without ever deleting one: what was there goes to `set-aside/`, with its companions
 * and its key file, and can be put back.
 */
import { copyFileSync, existsSync, linkSync, readdirSync, readFileSync, renameSync, rmSync } from 'node:fs';
import path from 'node:path';
import { CaseloadError } from './codes.ts';
import { caseloadFile, companions, keyFile, makeFolder, syncFile, syncFolder } from './files.ts';
import { parseKeyFile, readKeyFile, writeKeyFile, type KeyFileContent } from './key-file.ts';
import { wrapsOf } from './keys/key-wraps.ts';

export const setAsideFolder = (folder: string): string => path.join(folder, 'set-aside');

/** A second name for the same bytes where the file system can, else a copy. */
function keep(file: string, target: string): void {
  try {
    linkSync(file, target);
  } catch {
    copyFileSync(file, target);
    syncFile(target);
  }
}

/** Keeps what is there now under `set-aside/<name>` and leaves it in place. Answers the name; null when nothing is there. */
function keepAside(folder: string, stamp: string): string | null {
  const present = [...companions(caseloadFile(folder)), keyFile(folder)].filter(existsSync);
  if (!existsSync(caseloadFile(folder))) return null;
  let name = stamp;
  for (let n = 2; existsSync(path.join(setAsideFolder(folder), name)); n++) name = `${stamp}-${n}`;
  const target = path.join(setAsideFolder(folder), name);
  makeFolder(target);
  for (const file of present) {
    // The key file is rewritten in place by name, so that a copy is as good as a link.
    keep(file, path.join(target, path.basename(file)));
  }
  syncFolder(target);
  return name;
}

/** Names under which something was set aside, newest first. */
export function listAside(folder: string): string[] {
  if (!existsSync(setAsideFolder(folder))) return [];
  return readdirSync(setAsideFolder(folder)).sort().reverse();
}

/**
 * Puts a finished file in the place of the caseload, after keeping what was there. The folder's lock must be held.
 * While the files change places the key file opens either of them: a kill at any point leaves a caseload that opens.
 * @param ready the finished file, on the same disk; it is moved
 * @param key the key file that belongs to it
 * @returns the name under which the former caseload lies; null when there was none
 */
export function replaceCaseload(folder: string, ready: string, key: KeyFileContent, stamp: string) {
  const kept = keepAside(folder, stamp);
  const present = readKeyFile(folder);
  const same = present.state === 'ok' && present.file.recipient === key.recipient;
  const outgoing = present.state === 'ok' && !same ? wrapsOf(present.file) : null;
  // With the same secret the passphrase in use stays the one in use.
  const next = same ? { ...present.file, outgoing: null } : { ...key, outgoing: null };
  writeKeyFile(folder, { ...next, outgoing });
  const [main, wal, shm] = companions(caseloadFile(folder)) as [string, string, string];
  // A write-ahead log of the former file would be replayed into the new one.
  rmSync(wal, { force: true });
  rmSync(shm, { force: true });
  renameSync(ready, main);
  syncFolder(folder);
  writeKeyFile(folder, next);
  return kept;
}

/** Puts back what was set aside; what is there now is set aside in turn. The folder's lock must be held. @throws not-found */
export function putBack(folder: string, name: string, stamp: string): string | null {
  const source = path.join(setAsideFolder(folder), path.basename(name));
  const file = path.join(source, path.basename(caseloadFile(folder)));
  const keyName = path.join(source, path.basename(keyFile(folder)));
  if (!existsSync(file) || !existsSync(keyName)) throw new CaseloadError('not-found', 'set-aside');
  const key = parseKeyFile(readFileSync(keyName, 'utf8'));
  if (key.state !== 'ok') throw new CaseloadError('key-file-missing');
  const ready = `${caseloadFile(folder)}.ready`;
  copyFileSync(file, ready);
  syncFile(ready);
  const wal = existsSync(`${file}-wal`) ? readFileSync(`${file}-wal`) : null;
  const kept = replaceCaseload(folder, ready, key.file, stamp);
  if (wal !== null && wal.length > 0) {
    const part = `${caseloadFile(folder)}-wal.ready`;
    copyFileSync(`${file}-wal`, part);
    syncFile(part);
    renameSync(part, `${caseloadFile(folder)}-wal`);
    syncFolder(folder);
  }
  return kept;
}
