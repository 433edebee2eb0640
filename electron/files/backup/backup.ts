/**
 * Backups of the caseload: made, listed, restored. The work itself runs in a worker (backup/), so that the window
 * stays alive; a backup that was not read back and compared never gets its name.
 */
import { randomUUID } from 'node:crypto';
import { existsSync, readdirSync, rmSync } from 'node:fs';
import path from 'node:path';
import { caseloadFile, companions, makeFolder } from '../../../db/files.ts';
import { takeFolderLock, type FolderLock } from '../../../db/folder-lock.ts';
import { listAside, putBack, replaceCaseload } from '../../../db/set-aside.ts';
import { Refusal } from '../../contract/envelope.ts';
import { BACKUP_ENDING } from '../handed-file.ts';
import { openContainer } from './container.ts';
import { picturesFolder } from './picture-store.ts';
import { runBackupJob, type BackupHooks } from './jobs.ts';
import { backupsFolder, stampOf, refusing, infoOf, unlockBackup } from './backup-list.ts';
import type { BackupReason, BackupInfo } from './backup-list.ts';

function freeName(folder: string, now: string, reason: BackupReason): string {
  const base = `caseload-${stampOf(now)}-${reason}`;
  for (let n = 1; ; n++) {
    const name = `${base}${n === 1 ? '' : `-${n}`}.${BACKUP_ENDING}`;
    if (!existsSync(path.join(folder, name))) return name;
  }
}

export interface MakeBackup extends BackupHooks {
  folder: string;
  /** The open caseload's key (`withKey`); copied at once, so that it may be zeroed after the call. */
  identity: Uint8Array;
  /** Folder to write to, for example a USB stick; the caseload's own `backups/` otherwise. */
  to?: string;
  reason?: BackupReason;
  /** ISO instant. */
  now: string;
}

/**
 * Writes one backup, reads it back and compares counts and checksums. The caseload may be in use meanwhile: the
 * backup is one moment's state. @throws Refusal disk-full, folder-not-writable, backup-failed, backup-unverified, cancelled
 */
export function makeBackup(options: MakeBackup): Promise<BackupInfo> {
  const { folder, now, reason = 'hand', onProgress, signal } = options;
  const to = options.to ?? backupsFolder(folder);
  const identity = Buffer.from(options.identity);
  return refusing('backup-failed', async () => {
    makeFolder(to);
    const name = freeName(to, now, reason);
    const target = path.join(to, name);
    const scratch = path.join(folder, `checking-${process.pid}.part`);
    try {
      // What is made by hand is carried elsewhere: it holds everything itself.
      const pictures = reason === 'hand' ? null : picturesFolder(to);
      const job = { kind: 'write', folder, identity, target, scratch, now, pictures } as const;
      const answer = await runBackupJob(job, { onProgress, signal });
      if (answer.kind !== 'write') throw new Refusal('backup-failed');
      return infoOf(to, name, answer.manifest);
    } finally {
      identity.fill(0);
      // After a cancel the worker could not tidy up itself.
      for (const file of [`${target}.part`, ...companions(scratch)]) rmSync(file, { force: true });
    }
  });
}

export interface RestoreBackup extends BackupHooks {
  /** The caseload folder; its caseload must be closed when `beforeReplacing` returns, or absent. */
  folder: string;
  /** Called when the backup was opened, unpacked and compared, before the caseload is touched: closes it. */
  beforeReplacing?: () => void;
  /** The backup file. */
  file: string;
  /** The passphrase of the day of the backup, or the recovery key. */
  passphrase: string;
  now: string;
  /** Told the key of what was restored, zeroed after the call, and how far its trail goes. */
  onNewKey?: ((identity: Uint8Array, trail: { entries: number; head: string }) => void) | undefined;
}

/** Removes what restores that were killed left beside the caseload. The folder's lock must be held. */
function sweep(folder: string, ours: string): void {
  for (const name of readdirSync(folder)) {
    const left = /^caseload\.db\.[0-9a-f-]{36}\.ready(-wal|-shm)?$/.test(name);
    if (left && !companions(ours).includes(path.join(folder, name))) rmSync(path.join(folder, name), { force: true });
  }
}

/**
 * Restores a backup: unpacks it beside the caseload, compares, sets aside what was there, and only then lets the
 * new file take its place. @returns the name under `set-aside/` (for `undoRestore`), '' when there was no caseload
 * @throws Refusal not-a-backup, wrong-passphrase, newer-version, locked-by-another, disk-full, folder-not-writable, cancelled
 */
export function restoreBackup(options: RestoreBackup): Promise<{ keptAs: string }> {
  const { folder, file, passphrase, now, beforeReplacing = () => undefined, onProgress, signal } = options;
  return refusing('backup-failed', async () => {
    const { key } = await openContainer(file);
    const identity = await unlockBackup(key, passphrase);
    makeFolder(folder);
    const scratch = `${caseloadFile(folder)}.${randomUUID()}.ready`;
    let lock: FolderLock | null = null;
    try {
      const unpacked = await runBackupJob({ kind: 'unpack', file, scratch, identity }, { onProgress, signal });
      beforeReplacing();
      lock = takeFolderLock(folder);
      if (!lock) throw new Refusal('locked-by-another');
      sweep(folder, scratch);
      const keptAs = replaceCaseload(folder, scratch, key, stampOf(now)) ?? '';
      if (unpacked.kind === 'unpack') {
        const { counts, trailHead } = unpacked.manifest;
        options.onNewKey?.(identity, { entries: counts['trail'] ?? 0, head: trailHead });
      }
      return { keptAs };
    } finally {
      identity.fill(0);
      for (const each of companions(scratch)) rmSync(each, { force: true });
      lock?.release();
    }
  });
}

/** Takes a restore back: what was set aside returns, what is there now is set aside. The caseload must be closed. */
export function undoRestore(folder: string, keptAs: string, now: string): Promise<{ keptAs: string }> {
  return refusing('not-found', async () => {
    if (!listAside(folder).includes(keptAs)) throw new Refusal('not-found');
    const lock = takeFolderLock(folder);
    if (!lock) throw new Refusal('locked-by-another');
    try {
      return { keptAs: putBack(folder, keptAs, stampOf(now)) ?? '' };
    } finally {
      lock.release();
    }
  });
}

/**
 * Looks through the open caseload, in the worker.
 * @param what `check`: integrity, references, checksums and trail; `start`: a quick check of every page, and the trail
 */
export async function checkCaseload(
  folder: string,
  identity: Uint8Array,
  what: 'check' | 'start' = 'check',
  signal?: AbortSignal,
) {
  const copy = Buffer.from(identity);
  try {
    const answer = await runBackupJob({ kind: 'check', what, folder, identity: copy }, { signal });
    if (answer.kind !== 'check') throw new Refusal('backup-failed');
    return { file: answer.file, trail: answer.trail };
  } finally {
    copy.fill(0);
  }
}
