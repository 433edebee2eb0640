/** Creating and opening a caseload: every way it can fail has a code, and no failure changes the file. */
import { accessSync, constants, existsSync, rmSync, statSync } from 'node:fs';
import type { Caseload, Created, Opened, Secret } from './caseload.ts';
import { CaseloadError, type OpenCode } from './codes.ts';
import { checkFile, closeFile, createFile, openFile, readVersion, type Db } from './connection.ts';
import { normalPassphrase } from './age.ts';
import { codeOf } from './errors.ts';
import { caseloadFile, companions, keyFile, keyFileCopy, makeFolder, settle, writeDurably } from './files.ts';
import { takeFolderLock, type FolderLock } from './folder-lock.ts';
import { keyFileText, readKeyFile, writeKeyFile, type KeyFile } from './key-file.ts';
import { newSecret, unwrap, wrapsOf, type Wraps } from './keys/key-wraps.ts';
import { knownPeople, whoSignsIn } from './keys/people.ts';
import { isWeak } from './weak-passphrase.ts';
import { migrate, readMigrations, type Migration } from './migrate.ts';
import { openRecords } from './records/caseload-facts.ts';

/** Characters of a passphrase at the least, when one is set. */
export const SHORTEST_PASSPHRASE = 12;
/** Larger files are checked by a worker after opening: a quick check reads every page. Bytes. */
const CHECK_AT_OPENING_UP_TO = 64 * 1024 * 1024;

export const caseloadExists = (folder: string): boolean => existsSync(caseloadFile(folder));

const stampOf = (now: string): string => now.replace(/\.\d+/, '').replace(/[-:]/g, '');

const openCodes: readonly string[] = [
  'no-caseload',
  'caseload-exists',
  'wrong-passphrase',
  'passphrase-too-short',
  'passphrase-too-weak',
  'key-file-missing',
  'damaged',
  'newer-version',
  'locked-by-another',
  'folder-not-writable',
  'disk-full',
] satisfies OpenCode[];

/** Anything else that goes wrong while opening is thrown on: it is a fault of ours. */
export function refusal(error: unknown): { ok: false; code: OpenCode } {
  const code = codeOf(error);
  if (!openCodes.includes(code)) throw error;
  return { ok: false, code: code as OpenCode };
}

/** @throws folder-not-writable, locked-by-another */
export function holdFolder(folder: string): FolderLock {
  accessSync(folder, constants.R_OK | constants.W_OK | constants.X_OK);
  const lock = takeFolderLock(folder);
  if (!lock) throw new CaseloadError('locked-by-another');
  return lock;
}

export interface CreateOptions {
  folder: string;
  passphrase: string;
  /** ISO instant. */
  now: string;
  /** log2 of scrypt's N; lower only for the public demo and in tests. */
  workFactor?: number;
}

/** A new caseload in a folder that has none. The file gets its name only when it is complete. */
export async function createCaseload({ folder, passphrase, now, workFactor }: CreateOptions): Promise<Created> {
  let lock: FolderLock | null = null;
  let db: Db | null = null;
  const building = `${caseloadFile(folder)}.part`;
  try {
    if ([...normalPassphrase(passphrase)].length < SHORTEST_PASSPHRASE) {
      throw new CaseloadError('passphrase-too-short');
    }
    if (isWeak(passphrase)) throw new CaseloadError('passphrase-too-weak');
    makeFolder(folder);
    if (caseloadExists(folder) || existsSync(keyFile(folder))) throw new CaseloadError('caseload-exists');
    lock = holdFolder(folder);
    const { identity, wraps, recoveryKey } = await newSecret(passphrase, workFactor);
    for (const file of companions(building)) rmSync(file, { force: true });
    db = createFile(building, identity);
    migrate(db, null, stampOf(now));
    closeFile(db);
    writeKeyFile(folder, { at: now, ...wraps, outgoing: null });
    settle(building, caseloadFile(folder));
    db = openFile(caseloadFile(folder), identity);
    return { ok: true, caseload: openRecords({ db, folder, identity, lock, logLost: false }), recoveryKey };
  } catch (error) {
    db?.close();
    lock?.release();
    if (lock && !caseloadExists(folder)) {
      for (const file of [...companions(building), keyFile(folder), keyFileCopy(folder)]) rmSync(file, { force: true });
    }
    return refusal(error);
  }
}

/** A secret that the key file gave, and how it is wrapped there. */
interface Unwrapped {
  identity: Buffer;
  wraps: Wraps | null;
  /** Whose wraps opened (key-wraps.ts). */
  persons: string[];
}

/** The secrets that this passphrase opens. @throws key-file-missing, wrong-passphrase */
export async function unlock(folder: string, secret: Secret): Promise<{ file: KeyFile | null; secrets: Unwrapped[] }> {
  if ('identity' in secret)
    return { file: null, secrets: [{ identity: Buffer.from(secret.identity), wraps: null, persons: [] }] };
  const read = readKeyFile(folder);
  // Damaged counts as missing: the caseload file itself is unharmed, and the remedy is the same.
  if (read.state !== 'ok') throw new CaseloadError('key-file-missing');
  const secrets: Unwrapped[] = [];
  for (const wraps of [read.file, read.file.outgoing]) {
    const found = wraps && (await unwrap(wraps, secret));
    if (found) secrets.push({ ...found, wraps: wrapsOf(wraps) });
  }
  if (secrets.length === 0) throw new CaseloadError('wrong-passphrase');
  return { file: read.file, secrets };
}

/** The one of the secrets that opens the file, and the file's version. @throws damaged, wrong-passphrase */
export function fitting(
  file: string,
  secrets: readonly Unwrapped[],
  pending: boolean,
): Unwrapped & { version: number } {
  for (const [index, secret] of secrets.entries()) {
    try {
      return { ...secret, version: readVersion(file, secret.identity) };
    } catch (error) {
      if (codeOf(error) !== 'damaged') throw error;
      if (index < secrets.length - 1) continue;
      // A change of files was cut off, and this passphrase belongs to the other one of the two.
      throw pending && secrets.length === 1 ? new CaseloadError('wrong-passphrase') : error;
    }
  }
  throw new CaseloadError('damaged');
}

/**
 * SQLite removes the log's index (-shm) before the log (-wal) when it closes, so an index without its log is never left
 * by a close or a kill: somebody or something took the log away, and with it what was not in the file yet.
 */
const logIsLost = (file: string): boolean => existsSync(`${file}-shm`) && !existsSync(`${file}-wal`);

export type OpenOptions = { folder: string; now: string; migrations?: readonly Migration[] } & Secret;

/**
 * Opens the caseload of a folder: unlocks, looks for damage, refuses a newer version, migrates an older one after
 * keeping a copy. Nothing in the folder is changed by a refusal.
 */
export async function openCaseload(options: OpenOptions): Promise<Opened> {
  const { folder, now, migrations = readMigrations() } = options;
  const file = caseloadFile(folder);
  let lock: FolderLock | null = null;
  let db: Db | null = null;
  let secrets: Unwrapped[] = [];
  try {
    if (!caseloadExists(folder)) throw new CaseloadError('no-caseload');
    const unlocked = await unlock(folder, options);
    secrets = unlocked.secrets;
    lock = holdFolder(folder);
    if (statSync(file).size === 0) throw new CaseloadError('damaged');
    const logLost = logIsLost(file);
    const { identity, version, wraps, persons } = fitting(file, secrets, unlocked.file?.outgoing != null);
    if (version > migrations.length) throw new CaseloadError('newer-version');
    db = openFile(file, identity);
    if (statSync(file).size <= CHECK_AT_OPENING_UP_TO && checkFile(db, false) !== 'ok') {
      throw new CaseloadError('damaged');
    }
    migrate(db, folder, stampOf(now), migrations);
    const person = whoSignsIn(db, wraps, persons, options);
    settleKeyFile(folder, unlocked.file, wraps && knownPeople(db, wraps, unlocked.file?.outgoing ?? null));
    const caseload: Caseload = openRecords({ db, folder, identity: Buffer.from(identity), lock, logLost });
    return { ok: true, caseload, person };
  } catch (error) {
    db?.close();
    lock?.release();
    return refusal(error);
  } finally {
    for (const { identity } of secrets) identity.fill(0);
  }
}

/** Both copies of the key file whole again after one was lost, and no secret in it that is out of use. */
function settleKeyFile(folder: string, file: KeyFile | null, inUse: Wraps | null): void {
  if (file === null || inUse === null) return;
  const fewer = 'people' in inUse && 'people' in file && inUse.people.length < file.people.length;
  // Both copies are written whole: a kill in between leaves either.
  if (file.outgoing !== null || fewer) return writeKeyFile(folder, { at: file.at, ...inUse, outgoing: null });
  for (const name of [keyFile(folder), keyFileCopy(folder)]) {
    if (!existsSync(name)) writeDurably(name, keyFileText(file));
  }
}
