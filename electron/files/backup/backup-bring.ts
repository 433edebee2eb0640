/** A backup file that is brought in from elsewhere: looked at first, and never in the place of another. */
import { createHash, randomUUID } from 'node:crypto';
import {
  closeSync,
  existsSync,
  linkSync,
  openSync,
  readFileSync,
  readSync,
  renameSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import path from 'node:path';
import { makeFolder, syncFile, syncFolder } from '../../../db/files.ts';
import { Refusal } from '../../contract/envelope.ts';
import { readBackupName, refusing } from './backup-list.ts';
import { openContainer, type Container } from './container.ts';

/** First line of every file in the age format. */
const AGE = 'age-encryption.org/v1\n';

const sumOf = (bytes: Uint8Array): string => createHash('sha256').update(bytes).digest('hex');

/** Both sealed members begin as age files do: what can be told without the passphrase. */
function looksSealed({ file, manifest, caseload }: Container): boolean {
  const handle = openSync(file, 'r');
  try {
    return [manifest, caseload].every(({ offset, size }) => {
      const start = Buffer.alloc(Math.min(size, AGE.length));
      readSync(handle, start, 0, start.length, offset);
      return start.toString('latin1') === AGE;
    });
  } finally {
    closeSync(handle);
  }
}

/** Gives a finished file a name that no file has, where the file system can in one step. */
function nameIt(part: string, target: string): boolean {
  try {
    linkSync(part, target);
    return true;
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'EEXIST') return false;
    // No second names on this file system (a USB stick): looked at first instead.
    if (existsSync(target)) return false;
    renameSync(part, target);
    return true;
  }
}

/**
 * Keeps a backup beside the others. It is written whole and its parts are looked at before it gets a name; a backup
 * of that name stays as it is, and another one of the same name is counted up. Its inside is opened and compared when
 * it is restored, before anything is replaced.
 * @returns the name it is listed under
 * @throws Refusal not-a-backup, disk-full, folder-not-writable; nothing is changed then
 */
export function bringBackup(place: string, name: string, bytes: Uint8Array): Promise<string> {
  return refusing('backup-failed', async () => {
    if (!readBackupName(name)) throw new Refusal('not-a-backup');
    makeFolder(place);
    const part = path.join(place, `${randomUUID()}.part`);
    try {
      writeFileSync(part, bytes, { mode: 0o600, flag: 'wx' });
      if (!looksSealed(await openContainer(part))) throw new Refusal('not-a-backup');
      syncFile(part);
      const stem = name.replace(/(?:-\d+)?\.tar$/, '');
      for (let n = 1; ; n++) {
        const free = n === 1 ? name : `${stem}-${n}.tar`;
        const target = path.join(place, free);
        if (nameIt(part, target)) {
          syncFolder(place);
          return free;
        }
        // The very same file is here already.
        if (sumOf(readFileSync(target)) === sumOf(bytes)) return free;
      }
    } finally {
      rmSync(part, { force: true });
    }
  });
}
