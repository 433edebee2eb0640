/**
 * Backups of the caseload: made, listed, restored. The work itself runs in a worker (backup/), so that the window
 * stays alive; a backup that was not read back and compared never gets its name.
 */
import { randomUUID } from 'node:crypto';
import { existsSync, readdirSync, rmSync, statSync } from 'node:fs';
import path from 'node:path';
import type { Manifest } from '../../../db/dump.ts';
import { CaseloadError } from '../../../db/index.ts';
import { caseloadFile, companions, makeFolder } from '../../../db/files.ts';
import { takeFolderLock, type FolderLock } from '../../../db/folder-lock.ts';
import { normalRecoveryKey, unwrap, type KeyFile } from '../../../db/key-file.ts';
import { listAside, putBack, replaceCaseload } from '../../../db/set-aside.ts';
import { codeOf } from '../../../db/errors.ts';
import { Refusal } from '../../contract/envelope.ts';
import { messages, type MessageCode } from '../../contract/messages.ts';
import { openContainer } from './container.ts';
import { runBackupJob, type BackupHooks } from './jobs.ts';

/** Where backups lie when no other place was chosen. */
export const backupsFolder = (folder: string): string => path.join(folder, 'backups');

/** `hand` = asked for, kept until she deletes it; the others are rotated. */
export type BackupReason = 'hand' | 'hour' | 'close' | 'migration' | 'restore';

/** Name and time of a backup, read from its name alone. */
export interface BackupName {
  name: string;
  /** ISO instant, UTC. */
  at: string;
  reason: BackupReason;
}

export interface BackupInfo extends BackupName {
  bytes: number;
  /** Null while the caseload is locked, or for a backup that another key opens. */
  clients: number | null;
  /** ISO date of the latest visit in it. */
  lastVisit: string | null;
  /** Trail entries in it. */
  entries: number | null;
  /** Hash of its last trail entry. */
  head: string | null;
  /** Its seal and parts are right as far as the key at hand can tell. */
  verified: boolean;
}

const NAME = /^caseload-(\d{4})(\d\d)(\d\d)T(\d\d)(\d\d)(\d\d)Z-(hand|hour|close|migration|restore)(?:-\d+)?\.tar$/;

/** Null for files that are no backups of ours. */
export function readBackupName(name: string): BackupName | null {
  const match = NAME.exec(name);
  if (!match) return null;
  const [, y, mo, d, h, mi, s, reason] = match;
  return { name, at: `${y}-${mo}-${d}T${h}:${mi}:${s}.000Z`, reason: reason as BackupReason };
}

export const stampOf = (now: string): string => new Date(now).toISOString().replace(/\.\d+/, '').replace(/[-:]/g, '');

function freeName(folder: string, now: string, reason: BackupReason): string {
  const base = `caseload-${stampOf(now)}-${reason}`;
  for (let n = 1; ; n++) {
    const name = n === 1 ? `${base}.tar` : `${base}-${n}.tar`;
    if (!existsSync(path.join(folder, name))) return name;
  }
}

/** Runs `work`; what goes wrong leaves as a Refusal with a sentence. */
export async function refusing<T>(otherwise: MessageCode, work: () => Promise<T>): Promise<T> {
  try {
    return await work();
  } catch (error) {
    if (error instanceof Refusal) throw error;
    const code = error instanceof CaseloadError ? error.code : codeOf(error);
    const known = code !== 'internal' && code in messages;
    throw Object.assign(new Refusal(known ? (code as MessageCode) : otherwise), { cause: error });
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
      const job = { kind: 'write', folder, identity, target, scratch, now } as const;
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

function infoOf(folder: string, name: string, manifest: Manifest | null): BackupInfo {
  const read = readBackupName(name) ?? { name, at: manifest?.at ?? new Date(0).toISOString(), reason: 'hand' as const };
  return {
    ...read,
    bytes: statSync(path.join(folder, name)).size,
    clients: manifest?.counts['client'] ?? null,
    lastVisit: manifest?.lastVisit ?? null,
    entries: manifest?.counts['trail'] ?? null,
    head: manifest?.trailHead ?? null,
    verified: manifest !== null,
  };
}

/** Names of the backups in a folder, newest first; a folder that is not there has none. */
export function backupNames(place: string): BackupName[] {
  if (!existsSync(place)) return [];
  return readdirSync(place)
    .flatMap((name) => readBackupName(name) ?? [])
    .sort((a, b) => (a.at < b.at ? 1 : a.at > b.at ? -1 : b.name.localeCompare(a.name)));
}

/**
 * The backups of a folder, newest first. With the key at hand each says what it holds; without, only its name, time
 * and size. @param place the folder that holds the backups
 */
export async function listBackups(place: string, identity?: Uint8Array): Promise<BackupInfo[]> {
  const names = backupNames(place).map(({ name }) => name);
  if (!identity || names.length === 0) return names.map((name) => infoOf(place, name, null));
  const files = names.map((name) => path.join(place, name));
  const copy = Buffer.from(identity);
  try {
    const answer = await runBackupJob({ kind: 'manifests', files, identity: copy });
    const manifests = answer.kind === 'manifests' ? answer.manifests : [];
    return names.map((name, index) => infoOf(place, name, manifests[index] ?? null));
  } finally {
    copy.fill(0);
  }
}

/** The key of a backup by the passphrase of that day, or by the recovery key. @throws Refusal wrong-passphrase */
async function unlockBackup(key: KeyFile, secret: string): Promise<Buffer> {
  const identity =
    (normalRecoveryKey(secret).length === 32 ? await unwrap(key, { recoveryKey: secret }) : null) ??
    (await unwrap(key, { passphrase: secret }));
  if (identity === null) throw new Refusal('wrong-passphrase');
  return identity;
}

/** Key files tried with one passphrase when a list is asked for: each costs most of a second. */
const KEYS_TRIED = 4;

/** What backups hold, for choosing one while the caseload does not open. @throws Refusal wrong-passphrase, not-a-backup */
export function listBackupsWith(place: string, passphrase: string): Promise<BackupInfo[]> {
  return refusing('not-a-backup', async () => {
    let refused: unknown = null;
    const tried = new Set<string>();
    for (const { name } of backupNames(place)) {
      try {
        const { key } = await openContainer(path.join(place, name));
        // A damaged newest backup, or one under another passphrase, must not hide those before it.
        if (tried.has(key.passphrase) || tried.size === KEYS_TRIED) continue;
        tried.add(key.passphrase);
        const identity = await unlockBackup(key, passphrase);
        try {
          return await listBackups(place, identity);
        } finally {
          identity.fill(0);
        }
      } catch (error) {
        if (!(error instanceof Refusal)) throw error;
        if (refused === null || error.code === 'wrong-passphrase') refused = error;
      }
    }
    if (refused !== null) throw refused as Refusal;
    return [];
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
