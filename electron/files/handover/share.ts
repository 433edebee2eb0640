/**
 * A folder on the clinic's share through which hand-overs go. Files are written whole under a name of their own and
 * never changed; nobody deletes what another wrote. So two laptops that look in at the same time cannot disturb each
 * other, and a share that goes away leaves nothing half that counts.
 */
import { createHash, randomUUID } from 'node:crypto';
import { lstat, open, readdir, readFile, rename, rm, stat, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { Refusal } from '../../contract/envelope.ts';

const ENDING = '.handover.age';
/** Largest hand-over that is read, bytes. */
export const LARGEST_HANDOVER = 1024 ** 3;
/** Files of one folder that are looked at. */
const MOST_FILES = 2000;
/** A watch that has not been renewed for so long is over, ms. */
const WATCH_MS = 3 * 60_000;

/** First letters of a hash of the recipient: tells whose file it is without naming a person or a key. */
const tagOf = (recipient: string): string => createHash('sha256').update(recipient).digest('hex').slice(0, 12);

/** A name that tells nothing of any client. */
export const handoverName = (recipient: string, day: string): string =>
  `${day}-${tagOf(recipient)}-${randomUUID().slice(0, 8)}${ENDING}`;

const gone = (): Refusal => new Refusal('share-gone');

/** Writes a hand-over whole or not at all. @throws Refusal share-gone, disk-full */
export async function putIntoShare(folder: string, name: string, bytes: Uint8Array): Promise<void> {
  const part = path.join(folder, `.${randomUUID()}.part`);
  try {
    const handle = await open(part, 'wx', 0o600);
    try {
      await handle.writeFile(bytes);
      await handle.sync();
    } finally {
      await handle.close();
    }
    await rename(part, path.join(folder, name));
  } catch (error) {
    await rm(part, { force: true }).catch(() => undefined);
    if ((error as NodeJS.ErrnoException).code === 'ENOSPC') throw new Refusal('disk-full');
    throw gone();
  }
}

/** A share that does not answer for so long counts as gone, ms: the system itself may wait for minutes. */
const ANSWER_MS = 5000;
/** The look at each folder that has not been answered yet: a dead share would hold one thread of the system for each. */
const owed = new Map<string, Promise<unknown>>();

/** One look after the other. @throws Refusal share-gone when the share does not answer in time, or still owes an answer */
export async function inTime<T>(folder: string, look: () => Promise<T>, ms = ANSWER_MS): Promise<T> {
  let timer: NodeJS.Timeout | undefined;
  const late = new Promise<never>((_, reject) => (timer = setTimeout(() => reject(gone()), ms)));
  late.catch(() => undefined);
  try {
    for (let before = owed.get(folder); before; before = owed.get(folder)) await Promise.race([before, late]);
    const answer = look();
    const settled = answer.then(
      () => owed.delete(folder),
      () => owed.delete(folder),
    );
    owed.set(folder, settled);
    return await Promise.race([answer, late]);
  } finally {
    clearTimeout(timer);
  }
}

/** Whether the folder answers. Never asked at once (existsSync): a dead share would hold the whole program. */
export const isThere = (folder: string): Promise<boolean> =>
  inTime(folder, () => stat(folder)).then(
    (found) => found.isDirectory(),
    () => false,
  );

/** A file that changed within this time may still be on its way, ms; it is looked at twice, so long apart. */
const FRESH_MS = 60_000;
const APART_MS = 300;

/** Whether a file is still being copied: empty, or just changed and growing. Clocks of a share may be ahead. */
async function arrives(file: string, now: number): Promise<boolean> {
  const { size, mtimeMs } = await stat(file);
  if (size === 0) return true;
  if (now - mtimeMs > FRESH_MS) return false;
  await new Promise((resolve) => setTimeout(resolve, APART_MS));
  return (await stat(file)).size !== size;
}

export interface Waiting {
  /** Names of whole files, newest last. */
  whole: string[];
  /** Files that are still being copied. */
  arriving: number;
}

/**
 * The hand-overs in the folder that are for this key. @param taken names that do not count any more
 * @throws Refusal share-gone
 */
export function waitingInShare(
  folder: string,
  recipient: string,
  { taken, now }: { taken: ReadonlySet<string>; now: number },
): Promise<Waiting> {
  return inTime(folder, async () => {
    try {
      const tag = `-${tagOf(recipient)}-`;
      const names = (await readdir(folder))
        .filter((name) => name.endsWith(ENDING) && name.includes(tag) && path.basename(name) === name)
        .filter((name) => !taken.has(name))
        .sort()
        .slice(-MOST_FILES);
      const onTheWay = await Promise.all(names.map((name) => arrives(path.join(folder, name), now)));
      return { whole: names.filter((_, n) => !onTheWay[n]), arriving: onTheWay.filter(Boolean).length };
    } catch {
      throw gone();
    }
  });
}

/** @throws Refusal share-gone, not-a-handover */
export async function readFromShare(folder: string, name: string): Promise<Uint8Array> {
  const file = path.join(folder, name);
  try {
    const { size } = await lstat(file).then((link) => (link.isFile() ? stat(file) : Promise.reject(new Error('link'))));
    if (size > LARGEST_HANDOVER) throw new Refusal('not-a-handover');
    return await readFile(file);
  } catch (error) {
    throw error instanceof Refusal ? error : gone();
  }
}

/**
 * Says in the folder that this laptop looks in, and whether another with the same key does: its time, or null.
 * @throws Refusal share-gone
 */
export async function noteWatch(
  folder: string,
  recipient: string,
  laptop: string,
  now: number,
): Promise<string | null> {
  const prefix = `.${tagOf(recipient)}-`;
  try {
    await writeFile(path.join(folder, `${prefix}${laptop.slice(0, 8)}.watch`), '', { mode: 0o600 });
    for (const name of await readdir(folder)) {
      if (!name.startsWith(prefix) || !name.endsWith('.watch') || name.includes(`-${laptop.slice(0, 8)}.`)) continue;
      const { mtimeMs } = await stat(path.join(folder, name));
      if (now - mtimeMs < WATCH_MS) return new Date(mtimeMs).toISOString();
    }
    return null;
  } catch {
    throw gone();
  }
}
