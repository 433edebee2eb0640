/**
 * A changed passphrase, a used recovery key, a new recovery sheet: each re-encrypts the whole caseload under a new
 * secret. Wrapping the old secret anew would leave every old key file opening the caseload of today.
 */
import { renameSync, rmSync } from 'node:fs';
import { createFile, openFile, type Db } from './connection.ts';
import { CaseloadError, type OpenCode } from './codes.ts';
import { normalPassphrase } from './age.ts';
import { dump, load, manifestOf, sameCounts, sumsOf } from './dump.ts';
import { caseloadFile, companions, syncFile, syncFolder } from './files.ts';
import { newKeyPair } from './keys/age-keys.ts';
import { writeKeyFile } from './key-file.ts';
import { newHolder, newRecovery, newRecoveryKey, resealed, wrapsForOne, type Wraps } from './keys/key-wraps.ts';
import { migrate, readMigrations, versionOf } from './migrate.ts';
import { isWeak } from './weak-passphrase.ts';
import { fitting, holdFolder, refusal, SHORTEST_PASSPHRASE, unlock } from './open.ts';

export type RekeyOptions = {
  /** The caseload must be closed. */
  folder: string;
  /**
   * The passphrase from now on; it may be the same. Where each person has her own it is that of `person`, and without it
   * all stay as they are.
   */
  next?: string;
  /** Whose sign-in `next` is for, or whose passphrase is typed. Where there is one for all it has no meaning. */
  person?: string | undefined;
  /** Whose sign-ins end. */
  without?: readonly string[];
  /** A new recovery sheet, also where each person has a key of her own: else the sheet stays in use there. */
  newSheet?: boolean;
  now: string;
  /** log2 of scrypt's N; lower only in tests. */
  workFactor?: number | undefined;
  /** Told the new key, zeroed after the call, and how far the trail goes, when the new file is in place. */
  onNewKey?: ((identity: Uint8Array, trail: { entries: number; head: string }) => void) | undefined;
  // The passphrase in use, or the recovery key of the newest sheet.
} & ({ passphrase: string } | { recoveryKey: string });

/**
 * Copies everything into a file under a new secret, compares it, and lets it take the place of the old one. The key
 * file opens either of them until the new one is in place, so that a kill at any moment leaves a caseload that
 * opens. The old file is deleted: leaving it would defeat the purpose. Backups, copies and set-aside files made before
 * still open with the secrets of their day; the caller says so.
 * @returns the new recovery key, for a new sheet; '' where the sheet stays in use
 */
export async function rekeyCaseload(
  options: RekeyOptions,
): Promise<{ ok: true; recoveryKey: string } | { ok: false; code: OpenCode }> {
  const { folder, next, now } = options;
  const ready = `${caseloadFile(folder)}.ready`;
  let lock: { release(): void } | null = null;
  try {
    if (next !== undefined) {
      if ([...normalPassphrase(next)].length < SHORTEST_PASSPHRASE) throw new CaseloadError('passphrase-too-short');
      if (isWeak(next)) throw new CaseloadError('passphrase-too-weak');
    }
    const { file, secrets } = await unlock(folder, options);
    const fresh = { ...newKeyPair(), recoveryKey: '' };
    try {
      lock = holdFolder(folder);
      if (file === null) throw new CaseloadError('wrong-passphrase');
      // After a change that was cut off two secrets may be there: the one that opens the file is the one in use.
      const old = fitting(caseloadFile(folder), secrets, file.outgoing !== null);
      if (old.wraps === null) throw new CaseloadError('wrong-passphrase');
      const { wraps, recoveryKey } = await wrapAnew(old.wraps, fresh, options);
      fresh.recoveryKey = recoveryKey;
      const trail = copyUnder(folder, ready, old.identity, fresh.identity);
      const key = { at: now, ...wraps };
      writeKeyFile(folder, { ...key, outgoing: old.wraps });
      const [main, wal, shm] = companions(caseloadFile(folder)) as [string, string, string];
      // Emptied into the file by `copyUnder`; a log of the old file must not meet the new one.
      for (const each of [wal, shm]) rmSync(each, { force: true });
      renameSync(ready, main);
      syncFolder(folder);
      writeKeyFile(folder, { ...key, outgoing: null });
      options.onNewKey?.(fresh.identity, trail);
    } finally {
      for (const each of [fresh, ...secrets]) each.identity.fill(0);
    }
    return { ok: true, recoveryKey: fresh.recoveryKey };
  } catch (error) {
    return refusal(error);
  } finally {
    if (lock) for (const each of companions(ready)) rmSync(each, { force: true });
    lock?.release();
  }
}

/** The wraps of a new secret: of those who stay, with the passphrase or the sheet that is new. */
async function wrapAnew(
  old: Wraps,
  { identity, recipient }: { identity: Buffer; recipient: string },
  options: RekeyOptions,
): Promise<{ wraps: Wraps; recoveryKey: string }> {
  const { next, person, without = [], workFactor } = options;
  if (!('people' in old)) {
    if (next === undefined) throw new CaseloadError('malformed-request', 'passphrase');
    return wrapsForOne(identity, recipient, next, workFactor);
  }
  const people = [];
  for (const one of old.people) {
    if (without.includes(one.id)) continue;
    // With a changed passphrase the pair is new as well: her old key file and passphrase must open nothing of today.
    people.push(
      next !== undefined && one.id === person
        ? { ...(await newHolder(identity, next, workFactor)), id: one.id, mark: one.mark }
        : await resealed(one, identity),
    );
  }
  if (people.length === 0) throw new CaseloadError('malformed-request', 'people');
  const recoveryKey = options.newSheet || 'recoveryKey' in options ? newRecoveryKey() : '';
  const recovery = recoveryKey ? await newRecovery(identity, recoveryKey) : await resealed(old.recovery, identity);
  return { wraps: { recipient, people, recovery }, recoveryKey };
}

function copyUnder(folder: string, ready: string, from: Buffer, to: Buffer) {
  for (const each of companions(ready)) rmSync(each, { force: true });
  const old = openFile(caseloadFile(folder), from);
  try {
    old.pragma('wal_checkpoint(TRUNCATE)');
    const db = createFile(ready, to);
    let trail: { entries: number; head: string };
    try {
      migrate(db, null, '', readMigrations(), versionOf(old));
      db.pragma('foreign_keys = OFF');
      trail = copyRows(old, db);
      db.pragma('wal_checkpoint(TRUNCATE)');
    } finally {
      db.close();
    }
    syncFile(ready);
    return trail;
  } finally {
    old.close();
  }
}

function copyRows(old: Db, db: Db): { entries: number; head: string } {
  const waiting = new Map<string, Record<string, unknown>>();
  for (const entry of dump(old)) load(db, entry, waiting);
  const [before, after] = [manifestOf(old, ''), manifestOf(db, '')];
  const same = sameCounts(before.counts, after.counts) && before.trailHead === after.trailHead;
  const sums = [sumsOf(dump(old)), sumsOf(dump(db))].map((each) => JSON.stringify(each));
  if (!same || waiting.size > 0 || sums[0] !== sums[1]) throw new CaseloadError('damaged');
  return { entries: after.counts['trail'] ?? 0, head: after.trailHead };
}
