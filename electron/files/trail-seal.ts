/**
 * A sealed note of how far the trail goes: beside the key file, and once more outside the caseload's folder. It tells a
 * caseload that was rolled back together with all its backups, one whose history was rewritten without the key, and
 * another caseload that was put in its place with its own key.
 *
 * How far it goes: who can set back the note outside as well (the whole home folder of the user), or has the key and
 * knows this program, can make both notes fit. Against those stands the fingerprint on the printed pages.
 */
import { createCipheriv, createDecipheriv, createHash, hkdfSync, randomBytes } from 'node:crypto';
import { existsSync, readFileSync, rmSync } from 'node:fs';
import path from 'node:path';
import { z } from 'zod';
import { makeFolder, writeDurably } from '../../db/files.ts';
import type { Machine } from '../data-folder.ts';

const Seal = z.object({ entries: z.number().int().min(0), head: z.string().max(64), at: z.string().max(40) });
/** The trail's length and last hash at an instant. The length only grows: it is the count. */
type Seal = z.infer<typeof Seal>;

type SealFound = Seal | 'missing' | 'foreign';
type SealVerdict = 'fits' | 'rolled-back' | 'rewritten' | 'other-caseload' | 'seal-missing';

/** Where the notes lie. */
interface SealPlaces {
  beside: string;
  /** Null where the system has no such place. */
  outside: string | null;
}

/** Where a system keeps what a program remembers between runs, but not with its data (XDG_STATE_HOME). */
export function stateFolder({ platform, home, env }: Machine): string {
  if (platform === 'win32')
    return path.win32.join(env['LOCALAPPDATA'] ?? path.win32.join(home, 'AppData', 'Local'), 'Fairhand-state');
  if (platform === 'darwin') return path.join(home, 'Library', 'Preferences', 'Fairhand');
  const xdg = env['XDG_STATE_HOME'];
  return path.join(xdg && path.isAbsolute(xdg) ? xdg : path.join(home, '.local', 'state'), 'fairhand');
}

/** The outer note is named by a digest of the folder's path: it says neither whose nor where the caseload is. */
export function sealPlaces(folder: string, state: string | null): SealPlaces {
  const name = createHash('sha256').update(path.resolve(folder)).digest('hex').slice(0, 32);
  return { beside: path.join(folder, 'caseload.seal'), outside: state && path.join(state, `${name}.seal`) };
}

const keyOf = (identity: Uint8Array): Buffer =>
  Buffer.from(hkdfSync('sha256', identity, '', 'fairhand trail seal 1', 32));

function sealed(identity: Uint8Array, seal: Seal): string {
  const [key, nonce] = [keyOf(identity), randomBytes(12)];
  try {
    const cipher = createCipheriv('aes-256-gcm', key, nonce);
    const body = Buffer.concat([cipher.update(JSON.stringify(seal)), cipher.final()]);
    return Buffer.concat([nonce, cipher.getAuthTag(), body]).toString('base64');
  } finally {
    key.fill(0);
  }
}

export function readSeal(file: string | null, identity: Uint8Array): SealFound {
  if (file === null || !existsSync(file)) return 'missing';
  const key = keyOf(identity);
  try {
    const bytes = Buffer.from(readFileSync(file, 'utf8'), 'base64');
    const decipher = createDecipheriv('aes-256-gcm', key, bytes.subarray(0, 12), { authTagLength: 16 });
    decipher.setAuthTag(bytes.subarray(12, 28));
    return Seal.parse(
      JSON.parse(Buffer.concat([decipher.update(bytes.subarray(28)), decipher.final()]).toString('utf8')),
    );
  } catch {
    return 'foreign';
  } finally {
    key.fill(0);
  }
}

/** Writes both notes. One that cannot be written (a full disk, no such folder) stays as it was: it tells of less. */
export function writeSeals({ beside, outside }: SealPlaces, identity: Uint8Array, seal: Seal): void {
  for (const file of [beside, outside]) {
    if (file === null) continue;
    try {
      makeFolder(path.dirname(file));
      writeDurably(file, sealed(identity, seal));
    } catch {
      // Nothing of the caseload depends on it.
    }
  }
}

export function dropSeals({ beside, outside }: SealPlaces): void {
  for (const file of [beside, outside]) if (file !== null) rmSync(file, { force: true });
}

/**
 * What the notes say of an open caseload.
 * @param hashAt hash of the trail's entry of that number
 * @param wasSealed the caseload itself says that there are notes: one that was created so
 */
export function judgeSeals(
  found: { beside: SealFound; outside: SealFound },
  trail: { entries: number; hashAt: (entry: number) => string | null },
  wasSealed: boolean,
): SealVerdict {
  const both = [found.beside, found.outside];
  if (both.includes('foreign')) return 'other-caseload';
  const seals = both.filter((each): each is Seal => typeof each === 'object');
  if (seals.some(({ entries }) => entries > trail.entries)) return 'rolled-back';
  if (seals.some(({ entries, head }) => trail.hashAt(entries) !== head)) return 'rewritten';
  // On another computer only the note outside is missing.
  return (wasSealed || found.outside !== 'missing') && found.beside === 'missing' ? 'seal-missing' : 'fits';
}
