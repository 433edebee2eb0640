import { existsSync, readdirSync, statSync } from 'node:fs';
import path from 'node:path';
import type { Manifest } from '../../../db/dump.ts';
import { CaseloadError } from '../../../db/index.ts';
import type { KeyFile } from '../../../db/key-file.ts';
import { normalRecoveryKey, unwrap } from '../../../db/keys/key-wraps.ts';
import { codeOf } from '../../../db/errors.ts';
import { Refusal } from '../../contract/envelope.ts';
import { messages, type MessageCode } from '../../contract/messages.ts';
import { openContainer } from './container.ts';
import { runBackupJob } from './jobs.ts';

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

const NAME =
  /^caseload-(\d{4})(\d\d)(\d\d)T(\d\d)(\d\d)(\d\d)Z-(hand|hour|close|migration|restore)(?:-\d+)?\.(?:fhbackup|tar)$/;

/** Null for files that are no backups of ours. */
export function readBackupName(name: string): BackupName | null {
  const match = NAME.exec(name);
  if (!match) return null;
  const [, y, mo, d, h, mi, s, reason] = match;
  return { name, at: `${y}-${mo}-${d}T${h}:${mi}:${s}.000Z`, reason: reason as BackupReason };
}

export const stampOf = (now: string): string => new Date(now).toISOString().replace(/\.\d+/, '').replace(/[-:]/g, '');

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

export function infoOf(folder: string, name: string, manifest: Manifest | null): BackupInfo {
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

/** The key of a backup by the passphrase of that day, anybody's who had one, or by the recovery key. @throws Refusal wrong-passphrase */
export async function unlockBackup(key: KeyFile, secret: string): Promise<Buffer> {
  const found =
    (normalRecoveryKey(secret).length === 32 ? await unwrap(key, { recoveryKey: secret }) : null) ??
    (await unwrap(key, { passphrase: secret }));
  if (found === null) throw new Refusal('wrong-passphrase');
  return found.identity;
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
        const wraps = 'people' in key ? key.people.map(({ own }) => own).join() : key.passphrase;
        if (tried.has(wraps) || tried.size === KEYS_TRIED) continue;
        tried.add(wraps);
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
