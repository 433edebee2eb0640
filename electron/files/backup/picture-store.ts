/**
 * Pictures of the backups that are made by themselves, each kept once beside them: `pictures/<name>.age`, encrypted to
 * the caseload's key in the age format. A backup names the pictures it needs; what is there already is not written again,
 * so that an hour's backup takes as long as an hour's work. Backups by hand hold their pictures themselves.
 */
import { createHash, createHmac } from 'node:crypto';
import { existsSync, readdirSync, readFileSync, renameSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { copyFile } from 'node:fs/promises';
import path from 'node:path';
import { z } from 'zod';
import { openBytesWith, sealBytesTo } from '../../../db/keys/age-keys.ts';
import { makeFolder, syncFile, syncFolder } from '../../../db/files.ts';
import { Refusal } from '../../contract/envelope.ts';

/** What a backup says of one picture; `name` is its file in the store, without the ending. */
export const StoredPicture = z.object({
  id: z.uuid(),
  sha256: z.string().length(64),
  size: z.number().int().min(0),
  name: z.string().regex(/^[0-9a-f]{48}$/),
});
export type StoredPicture = z.infer<typeof StoredPicture>;

/** Member of the inner archive that lists them. */
export const PICTURES = 'pictures.json';

export const picturesFolder = (place: string): string => path.join(place, 'pictures');

const STORED = /^[0-9a-f]{48}\.age$/;
const fileOf = (folder: string, name: string): string => path.join(folder, `${name}.age`);

/** The same content under the same key has the same name, which tells nobody else what it is. */
const nameOf = (identity: Uint8Array, sha256: string): string =>
  createHmac('sha256', identity).update(`picture ${sha256}`).digest('hex').slice(0, 48);

/** Its seal makes a stored picture larger than its content, never smaller. */
const isThere = (file: string, size: number): boolean => (statSync(file, { throwIfNoEntry: false })?.size ?? -1) > size;

const sumOf = (bytes: Uint8Array): string => createHash('sha256').update(bytes).digest('hex');

/**
 * Writes the pictures that the store does not hold yet; each is read back and compared before it gets its name.
 * @throws Refusal backup-unverified; the system's errors of a full disk
 */
export async function storePictures(
  pictures: readonly Omit<StoredPicture, 'name'>[],
  bytesOf: (id: string) => Uint8Array,
  store: { folder: string; identity: Uint8Array; recipient: string; progress: (bytes: number) => void },
): Promise<StoredPicture[]> {
  const { folder, identity, recipient, progress } = store;
  makeFolder(folder);
  let written = false;
  const stored: StoredPicture[] = [];
  for (const { id, sha256, size } of pictures) {
    const name = nameOf(identity, sha256);
    const file = fileOf(folder, name);
    if (!isThere(file, size)) {
      const part = `${file}.part`;
      writeFileSync(part, await sealBytesTo(bytesOf(id), recipient), { mode: 0o600 });
      const readBack = await openBytesWith(readFileSync(part), identity);
      if (readBack === null || sumOf(readBack) !== sha256) {
        rmSync(part, { force: true });
        throw new Refusal('backup-unverified');
      }
      syncFile(part);
      renameSync(part, file);
      written = true;
    }
    stored.push({ id, sha256, size, name });
    progress(size);
  }
  if (written) syncFolder(folder);
  return stored;
}

/** Which pictures are not in the store. */
export const missingIn = (folder: string, pictures: readonly StoredPicture[]): StoredPicture[] =>
  pictures.filter(({ name, size }) => !isThere(fileOf(folder, name), size));

/** A picture's own bytes. @throws Refusal backup-pictures-missing, not-a-backup where it is not what the backup says */
export async function storedBytes(folder: string, picture: StoredPicture, identity: Uint8Array): Promise<Buffer> {
  const file = fileOf(folder, picture.name);
  if (!existsSync(file)) throw new Refusal('backup-pictures-missing');
  const bytes = await openBytesWith(readFileSync(file), identity);
  if (bytes === null || sumOf(bytes) !== picture.sha256) throw new Refusal('not-a-backup');
  return bytes;
}

/**
 * Copies what another place's store holds and this one does not, for a backup that is brought from there: all of it,
 * because only the key tells which pictures the backup names. The window goes on meanwhile.
 */
export async function bringPictures(fromPlace: string, toPlace: string): Promise<void> {
  const [from, to] = [picturesFolder(fromPlace), picturesFolder(toPlace)];
  if (!existsSync(from) || path.resolve(from) === path.resolve(to)) return;
  makeFolder(to);
  for (const each of readdirSync(from).filter((name) => STORED.test(name))) {
    const file = path.join(to, each);
    if (existsSync(file)) continue;
    await copyFile(path.join(from, each), `${file}.part`);
    syncFile(`${file}.part`);
    renameSync(`${file}.part`, file);
  }
  syncFolder(to);
}

/** Deletes the pictures that no backup names any more, and halves of a kill. Answers how many went. */
export function sweepPictures(place: string, named: ReadonlySet<string>): number {
  const folder = picturesFolder(place);
  if (!existsSync(folder)) return 0;
  const gone = readdirSync(folder).filter(
    (each) => each.endsWith('.part') || (STORED.test(each) && !named.has(each.slice(0, -4))),
  );
  for (const each of gone) rmSync(path.join(folder, each), { force: true });
  return gone.length;
}
