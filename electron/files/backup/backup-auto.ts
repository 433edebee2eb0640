/** Backups that nobody has to think of: hourly if something changed, and at closing; old ones are rotated away. */
import { existsSync, rmSync } from 'node:fs';
import path from 'node:path';
import type { Caseload } from '../../../db/index.ts';
import { listAside } from '../../../db/set-aside.ts';
import { noteSecond } from './backup-second.ts';
import { makeBackup } from './backup.ts';
import { backupNames, backupsFolder, listBackups, stampOf, type BackupInfo, type BackupReason } from './backup-list.ts';
import { runBackupJob } from './jobs.ts';
import { sweepPictures } from './picture-store.ts';
import { isDue, mayGo, type BackupState } from './backup-schedule.ts';

export interface AutoBackupOptions {
  caseload: Caseload;
  now: () => Date;
  /** The second place of the moment, for example a USB stick; skipped while it is not there. */
  second?: () => string | null;
  /** Told after each backup, also of one that failed: 'code' is the refusal's. */
  onDone?: (done: { ok: true; info: BackupInfo; place: 'first' | 'second' } | { ok: false; code: string }) => void;
}

export interface AutoBackup {
  /** Makes a backup if one is due. Call it every few minutes; calls while one is running do nothing. */
  look(): Promise<void>;
  /** Makes one now if anything changed since the last: at closing, before a migration or a restore. */
  ifChanged(reason: BackupReason): Promise<void>;
  /** Stops a backup that is running; resolves when its files are gone. */
  stop(): Promise<void>;
  /**
   * The newest backup holds more changes than the caseload, and no restore since then explains it: a part of the
   * file was lost with its log.
   */
  behind: boolean;
  /** A backup made since the last restore holds a trail that is not the beginning of this one: it was rewritten. */
  rewritten: boolean;
}

/** Deletes what rotation gives free. Answers the names. */
export function rotate(place: string, offsetMinutes: number, now: string): string[] {
  const names = mayGo(backupNames(place), offsetMinutes, now);
  for (const name of names) rmSync(path.join(place, name), { force: true });
  return names;
}

/** Pictures that no backup of the place needs any more go; where one cannot be asked, all stay. */
export async function sweepStore(place: string, identity: Uint8Array): Promise<void> {
  const files = backupNames(place)
    .filter(({ reason }) => reason !== 'hand')
    .map(({ name }) => path.join(place, name));
  const answer = await runBackupJob({ kind: 'manifests', files, identity });
  if (answer.kind !== 'manifests' || answer.manifests.includes(null)) return;
  sweepPictures(place, new Set(answer.manifests.flatMap((each) => each?.pictures ?? [])));
}

/** Ready to look; reads from the newest backup how far it goes. */
export async function autoBackup(options: AutoBackupOptions): Promise<AutoBackup> {
  const { caseload, now, second = () => null, onDone } = options;
  const { folder } = caseload;
  const first = backupsFolder(folder);
  const state: BackupState = { backedUpSeq: null, backedUpAt: backupNames(first)[0]?.at ?? null };
  const other = second();
  const places = [first, ...(other !== null && existsSync(other) ? [other] : [])];
  const listed = await Promise.all(places.map((place) => caseload.withKey((identity) => listBackups(place, identity))));
  const newest = listed[0]!.find((each) => each.verified);
  if (newest) Object.assign(state, { backedUpSeq: newest.entries, backedUpAt: newest.at });

  let running: Promise<void> | null = null;
  let stopper = new AbortController();

  const make = async (reason: BackupReason): Promise<void> => {
    const other = second();
    const places = [first, ...(other !== null && existsSync(other) ? [other] : [])];
    const at = now();
    const seq = caseload.lastSeq();
    for (const to of places) {
      try {
        const { signal } = stopper;
        const info = await caseload.withKey((identity) =>
          makeBackup({ folder, identity, to, reason, now: at.toISOString(), signal }),
        );
        if (to === first) Object.assign(state, { backedUpSeq: seq, backedUpAt: at.toISOString() });
        else noteSecond(folder, to, at.toISOString());
        const gone = rotate(to, -at.getTimezoneOffset(), at.toISOString());
        onDone?.({ ok: true, info, place: to === first ? 'first' : 'second' });
        // A pass that fails is made up by the next.
        if (gone.length > 0) await tidy(to).catch(() => undefined);
      } catch (error) {
        onDone?.({ ok: false, code: (error as { code?: string }).code ?? 'backup-failed' });
      }
    }
  };
  const tidy = async (place: string): Promise<void> => caseload.withKey((identity) => sweepStore(place, identity));
  const start = (reason: BackupReason): Promise<void> => {
    running ??= make(reason).finally(() => (running = null));
    return running;
  };

  const replaced = listAside(folder)[0] ?? '';
  const explained = newest !== undefined && replaced !== '' && replaced >= stampOf(newest.at);

  // Backups of the branch that a restore left do not belong to this trail any more.
  const rewritten = listed
    .flat()
    .filter(({ at }) => replaced === '' || stampOf(at) > replaced)
    .some(({ entries, head }) => {
      if (entries === null || head === null || entries > caseload.lastSeq()) return false;
      return caseload.trailHashAt(entries) !== head;
    });

  return {
    rewritten,
    behind: newest !== undefined && !explained && (newest.entries ?? 0) > caseload.lastSeq(),
    look: async () => {
      if (isDue(state, caseload.lastSeq(), now().toISOString())) await start('hour');
    },
    ifChanged: async (reason) => {
      await running;
      if (state.backedUpSeq !== caseload.lastSeq()) await start(reason);
    },
    stop: async () => {
      stopper.abort();
      await running;
      stopper = new AbortController();
    },
  };
}
