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
import { newSecret, writeKeyFile } from './key-file.ts';
import { migrate, readMigrations, versionOf } from './migrate.ts';
import { isWeak } from './weak-passphrase.ts';
import { fitting, holdFolder, refusal, SHORTEST_PASSPHRASE, unlock } from './open.ts';

export type RekeyOptions = {
  /** The caseload must be closed. */
  folder: string;
  /** The passphrase from now on; it may be the same. */
  next: string;
  now: string;
  /** log2 of scrypt's N; lower only in tests. */
  workFactor?: number;
  /** Told the new key, zeroed after the call, and how far the trail goes, when the new file is in place. */
  onNewKey?: ((identity: Uint8Array, trail: { entries: number; head: string }) => void) | undefined;
  // The passphrase in use, or the recovery key of the newest sheet.
} & ({ passphrase: string } | { recoveryKey: string });

/**
 * Copies everything into a file under a new secret, compares it, and lets it take the place of the old one. The key
 * file opens either of them until the new one is in place, so that a kill at any moment leaves a caseload that
 * opens. The old file is deleted: leaving it would defeat the purpose. Backups, copies and set-aside files made before
 * still open with the secrets of their day; the caller says so.
 * @returns the new recovery key, for a new sheet
 */
export async function rekeyCaseload(
  options: RekeyOptions,
): Promise<{ ok: true; recoveryKey: string } | { ok: false; code: OpenCode }> {
  const { folder, next, now, workFactor } = options;
  const ready = `${caseloadFile(folder)}.ready`;
  let lock: { release(): void } | null = null;
  try {
    if ([...normalPassphrase(next)].length < SHORTEST_PASSPHRASE) throw new CaseloadError('passphrase-too-short');
    if (isWeak(next)) throw new CaseloadError('passphrase-too-weak');
    const { file, secrets } = await unlock(folder, options);
    const fresh = await newSecret(next, workFactor);
    try {
      lock = holdFolder(folder);
      if (file === null) throw new CaseloadError('wrong-passphrase');
      // After a change that was cut off two secrets may be there: the one that opens the file is the one in use.
      const old = fitting(caseloadFile(folder), secrets, file.outgoing !== null);
      if (old.wraps === null) throw new CaseloadError('wrong-passphrase');
      const trail = copyUnder(folder, ready, old.identity, fresh.identity);
      const { recipient, passphrase: wrapped, recovery } = old.wraps;
      const key = { format: 'fairhand-key', version: 1, at: now, ...fresh.wraps } as const;
      writeKeyFile(folder, { ...key, outgoing: { recipient, passphrase: wrapped, recovery } });
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
