/**
 * The caseload's secret, sealed by the operating system's key store, beside the key file. Opt in; the passphrase goes
 * on opening the caseload. It names whose secret it is, so that a replaced caseload is never tried with it: a wrong
 * key would look like damage.
 */
import { existsSync, readFileSync, rmSync } from 'node:fs';
import path from 'node:path';
import { z } from 'zod';
import { isRecipientOf } from '../../db/keys/age-keys.ts';
import { writeDurably } from '../../db/files.ts';
import { readKeyFile } from '../../db/key-file.ts';
import { Refusal } from '../contract/envelope.ts';
import type { KeyStore } from '../key-store.ts';

const SystemKey = z.object({
  format: z.literal('fairhand-system-key'),
  version: z.literal(1),
  /** Public half of the secret. */
  recipient: z.string(),
  /** What the key store made of the secret, base64. */
  sealed: z.base64(),
});

export const systemKeyFile = (folder: string): string => path.join(folder, 'caseload.system-key.json');

export const hasSystemKey = (folder: string): boolean => existsSync(systemKeyFile(folder));

export function forgetSystemKey(folder: string): void {
  rmSync(systemKeyFile(folder), { force: true });
}

/** @throws Refusal system-key-unusable */
export async function keepSystemKey(folder: string, identity: Uint8Array, store: KeyStore): Promise<void> {
  // A string cannot be zeroed: this copy stays until the garbage collector takes it.
  const secret = Buffer.from(identity).toString('ascii');
  try {
    if ((await store.state()) !== 'usable') throw new Error('not usable');
    const sealed = Buffer.from(await store.seal(secret));
    if (sealed.includes(secret) || (await store.open(sealed)) !== secret) throw new Error('the store does not hold it');
    const present = readKeyFile(folder);
    if (present.state !== 'ok' || !isRecipientOf(present.file.recipient, identity))
      throw new Error('of another caseload');
    const { recipient } = present.file;
    const key = { format: 'fairhand-system-key', version: 1, recipient, sealed: sealed.toString('base64') };
    writeDurably(systemKeyFile(folder), `${JSON.stringify(key, null, 2)}\n`);
  } catch {
    throw new Refusal('system-key-unusable');
  }
}

/**
 * The secret; zero it after use. A key that is not this caseload's is forgotten.
 * @throws Refusal system-key-unusable
 */
export async function openSystemKey(folder: string, store: KeyStore): Promise<Buffer> {
  try {
    const key = SystemKey.parse(JSON.parse(readFileSync(systemKeyFile(folder), 'utf8')));
    const present = readKeyFile(folder);
    if (present.state !== 'ok' || present.file.recipient !== key.recipient) {
      forgetSystemKey(folder);
      throw new Error('of another caseload');
    }
    if ((await store.state()) !== 'usable') throw new Error('not usable');
    const secret = await store.open(Buffer.from(key.sealed, 'base64'));
    const identity = Buffer.from(secret, 'ascii');
    if (!isRecipientOf(key.recipient, identity)) throw new Error('not the secret');
    return identity;
  } catch {
    throw new Refusal('system-key-unusable');
  }
}
