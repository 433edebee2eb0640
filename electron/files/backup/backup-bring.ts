/** A backup file that is brought in from elsewhere: looked at first, and never in the place of another. */
import { createHash, randomUUID } from 'node:crypto';
import {
  closeSync,
  createReadStream,
  existsSync,
  linkSync,
  openSync,
  readSync,
  renameSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { copyFile } from 'node:fs/promises';
import path from 'node:path';
import { makeFolder, syncFile, syncFolder } from '../../../db/files.ts';
import { Refusal } from '../../contract/envelope.ts';
import { BACKUP_ENDING } from '../handed-file.ts';
import { readBackupName, refusing, stampOf } from './backup-list.ts';
import { bringPictures } from './picture-store.ts';
import { openContainer, type Container } from './container.ts';

/** First line of every file in the age format. */
const AGE = 'age-encryption.org/v1\n';

async function sumOf(file: string): Promise<string> {
  const sum = createHash('sha256');
  for await (const chunk of createReadStream(file)) sum.update(chunk as Uint8Array);
  return sum.digest('hex');
}
const isSame = async (one: string, other: string): Promise<boolean> =>
  statSync(one).size === statSync(other).size && (await sumOf(one)) === (await sumOf(other));

function nameOf(given: string, source: Uint8Array | string): string {
  if (readBackupName(given)) return given;
  if (typeof source !== 'string' || !given.endsWith(`.${BACKUP_ENDING}`) || !existsSync(source)) {
    throw new Refusal('not-a-backup');
  }
  return `caseload-${stampOf(statSync(source).mtime.toISOString())}-hand.${BACKUP_ENDING}`;
}

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
 * @param source the file's bytes, or where it lies: then it may be of any size, and one that was given another name gets
 *   that of its day
 * @returns the name it is listed under
 * @throws Refusal not-a-backup, disk-full, folder-not-writable; nothing is changed then
 */
export function bringBackup(place: string, given: string, source: Uint8Array | string): Promise<string> {
  return refusing('backup-failed', async () => {
    const name = nameOf(given, source);
    makeFolder(place);
    const part = path.join(place, `${randomUUID()}.part`);
    try {
      if (typeof source === 'string') await copyFile(source, part);
      else writeFileSync(part, source, { mode: 0o600, flag: 'wx' });
      if (!looksSealed(await openContainer(part))) throw new Refusal('not-a-backup');
      if (typeof source === 'string') await bringPictures(path.dirname(source), place);
      syncFile(part);
      const ending = path.extname(name);
      const stem = name.slice(0, -ending.length).replace(/-\d+$/, '');
      for (let n = 1; ; n++) {
        const free = n === 1 ? name : `${stem}-${n}${ending}`;
        const target = path.join(place, free);
        if (nameIt(part, target)) {
          syncFolder(place);
          return free;
        }
        // The very same file is here already.
        if (await isSame(target, part)) return free;
      }
    } finally {
      rmSync(part, { force: true });
    }
  });
}
