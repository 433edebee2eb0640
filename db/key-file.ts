/**
 * The key file beside the caseload file.
 *
 * It holds one random secret, twice: wrapped by the passphrase and by the one-time recovery key of the printed
 * sheet. The secret is an age identity (X25519), and each wrap is a plain age file, because
 *  - the caseload file's own key is derived from it (HKDF), and backups are encrypted to its public half: one
 *    secret to keep, and an automatic backup needs no passphrase in memory;
 *  - any program that reads age can open wraps and backups, so that nobody depends on Fairhand for their records.
 * A checksum over the file tells a damaged key file from a wrong passphrase, which SQLite cannot.
 */
import { createHash, hkdfSync, randomBytes } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { generateX25519Identity, identityToRecipient } from 'age-encryption';
import { z } from 'zod';
import { openBytes, sealText } from './age.ts';
import { keyFile, keyFileCopy, writeDurably } from './files.ts';

const Wraps = z.object({ recipient: z.string(), passphrase: z.string().max(4000), recovery: z.string().max(4000) });

export const KeyFile = z.object({
  format: z.literal('fairhand-key'),
  version: z.literal(1),
  /** When the passphrase was last set. */
  at: z.string(),
  ...Wraps.shape,
  /** While the caseload is being re-encrypted: the secret that is going out of use. */
  outgoing: Wraps.nullable(),
  sha256: z.string(),
});
export type KeyFile = z.infer<typeof KeyFile>;
export type Wraps = z.infer<typeof Wraps>;

export type KeyFileRead = { state: 'ok'; file: KeyFile } | { state: 'missing' } | { state: 'damaged' };

const checksum = (file: Omit<KeyFile, 'sha256'>): string =>
  createHash('sha256')
    .update(JSON.stringify([file.format, file.version, file.at, wrapList(file), wrapList(file.outgoing)]))
    .digest('hex');

const wrapList = (wraps: Wraps | null): string[] | null => wraps && [wraps.recipient, wraps.passphrase, wraps.recovery];

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

export const keyFileText = (file: Omit<KeyFile, 'sha256'>): string =>
  `${JSON.stringify({ ...file, sha256: checksum(file) }, null, 2)}\n`;

/** Writes both copies, one after the other, so that one of them is whole at any moment. */
export function writeKeyFile(folder: string, file: Omit<KeyFile, 'sha256'>): void {
  const text = keyFileText(file);
  writeDurably(keyFile(folder), text);
  writeDurably(keyFileCopy(folder), text);
}

/** No I, L, O, U: nothing on the printed sheet can be misread. */
const ALPHABET = '0123456789ABCDEFGHJKMNPQRSTVWXYZ';

/** 160 random bits in eight groups of four. */
function newRecoveryKey(): string {
  const letters = [...randomBytes(32)].map((byte) => ALPHABET[byte % 32]);
  return (letters.join('').match(/.{4}/g) ?? []).join('-');
}

/** What was typed from the sheet: case, hyphens, spaces and the letters left out do not matter. */
export const normalRecoveryKey = (typed: string): string =>
  typed
    .toUpperCase()
    .replace(/O/g, '0')
    .replace(/[IL]/g, '1')
    .replace(/[^0-9A-Z]/g, '');

/** The recovery key is random already: stretching it would only cost time. */
const RECOVERY_WORK_FACTOR = 10;

/** A new secret with both wraps. `identity` is secret: zero it after use. */
export async function newSecret(
  passphrase: string,
  workFactor?: number,
): Promise<{ identity: Buffer; wraps: Wraps; recoveryKey: string }> {
  const identity = await generateX25519Identity();
  const recoveryKey = newRecoveryKey();
  return {
    identity: Buffer.from(identity),
    recoveryKey,
    wraps: {
      recipient: await identityToRecipient(identity),
      passphrase: await sealText(identity, passphrase, workFactor),
      recovery: await sealText(identity, normalRecoveryKey(recoveryKey), RECOVERY_WORK_FACTOR),
    },
  };
}

/** The secret, or null when the passphrase or recovery key is not the one. */
export async function unwrap(
  wraps: Pick<Wraps, 'passphrase' | 'recovery'>,
  secret: { passphrase: string } | { recoveryKey: string },
): Promise<Buffer | null> {
  return 'passphrase' in secret
    ? openBytes(wraps.passphrase, secret.passphrase)
    : openBytes(wraps.recovery, normalRecoveryKey(secret.recoveryKey));
}

/** Key of the caseload file, 32 bytes (HKDF-SHA-256, RFC 5869). Zero it after use. */
export function caseloadKey(identity: Uint8Array): Buffer {
  return Buffer.from(hkdfSync('sha256', identity, '', 'fairhand caseload file 1', 32));
}
