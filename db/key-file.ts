/**
 * The key file beside the caseload file.
 *
 * It holds one random secret, wrapped by the passphrase (of each person, key-wraps.ts) and by the one-time recovery
 * key of the printed sheet. The secret is an age identity (X25519), and each wrap is a plain age file, because
 *  - the caseload file's own key is derived from it (HKDF), and backups are encrypted to its public half: one
 *    secret to keep, and an automatic backup needs no passphrase in memory;
 *  - any program that reads age can open wraps and backups, so that nobody depends on Fairhand for their records.
 * A checksum over the file tells a damaged key file from a wrong passphrase, which SQLite cannot.
 */
import { createHash, hkdfSync } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { z } from 'zod';
import { keyFile, keyFileCopy, writeDurably } from './files.ts';
import { wrapList, WrapsOfOne, wrapsOf, WrapsOfPeople, type Wraps } from './keys/key-wraps.ts';

const Every = z.object({
  format: z.literal('fairhand-key'),
  /** 1: one sign-in. 2: several, or several while files change places. */
  version: z.union([z.literal(1), z.literal(2)]),
  /** When a passphrase was last set. */
  at: z.string(),
  /** While the caseload is being re-encrypted: the secret that is going out of use. */
  outgoing: z.union([WrapsOfOne, WrapsOfPeople]).nullable(),
  sha256: z.string(),
});

export const KeyFile = z.union([Every.extend(WrapsOfOne.shape), Every.extend(WrapsOfPeople.shape)]);
export type KeyFile = z.infer<typeof KeyFile>;

/** What a key file is written from: its version and checksum follow. */
export type KeyFileContent = Wraps & { at: string; outgoing: Wraps | null };

export type KeyFileRead = { state: 'ok'; file: KeyFile } | { state: 'missing' } | { state: 'damaged' };

type Sealed = KeyFileContent & { format: string; version: number };

const checksum = (file: Sealed): string =>
  createHash('sha256')
    .update(JSON.stringify([file.format, file.version, file.at, wrapList(file), wrapList(file.outgoing)]))
    .digest('hex');

/** Reads key file text; anything but a whole key file is 'damaged'. */
export function parseKeyFile(text: string): KeyFileRead {
  try {
    const file = KeyFile.parse(JSON.parse(text));
    return file.sha256 === checksum(file) ? { state: 'ok', file } : { state: 'damaged' };
  } catch {
    return { state: 'damaged' };
  }
}

/** The key file of a folder; its copy when the first is missing or damaged. @throws file system errors but ENOENT */
export function readKeyFile(folder: string): KeyFileRead {
  let worst: KeyFileRead = { state: 'missing' };
  for (const name of [keyFile(folder), keyFileCopy(folder)]) {
    let text: string;
    try {
      text = readFileSync(name, 'utf8');
    } catch (error) {
      if ((error as NodeJS.ErrnoException).code === 'ENOENT') continue;
      throw error;
    }
    const read = parseKeyFile(text);
    if (read.state === 'ok') return read;
    worst = read;
  }
  return worst;
}

export function keyFileText({ at, outgoing, ...file }: KeyFileContent): string {
  const several = 'people' in file || (outgoing !== null && 'people' in outgoing);
  const written = {
    format: 'fairhand-key',
    version: several ? 2 : 1,
    at,
    ...wrapsOf(file),
    outgoing: outgoing && wrapsOf(outgoing),
  };
  return `${JSON.stringify({ ...written, sha256: checksum(written) }, null, 2)}\n`;
}

/** Writes both copies, one after the other, so that one of them is whole at any moment. */
export function writeKeyFile(folder: string, file: KeyFileContent): void {
  const text = keyFileText(file);
  writeDurably(keyFile(folder), text);
  writeDurably(keyFileCopy(folder), text);
}

/** Key of the caseload file, 32 bytes (HKDF-SHA-256, RFC 5869). Zero it after use. */
export function caseloadKey(identity: Uint8Array): Buffer {
  return Buffer.from(hkdfSync('sha256', identity, '', 'fairhand caseload file 1', 32));
}
