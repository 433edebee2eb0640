/** After clients were erased: which older files still hold one of them. They are the therapist's to delete, or to let rotate away. */
import { existsSync, readdirSync } from 'node:fs';
import path from 'node:path';
import { copiesFolder } from '../../../db/files.ts';
import { listAside, setAsideFolder } from '../../../db/set-aside.ts';
import { backupNames, backupsFolder, refusing } from './backup-list.ts';
import { runBackupJob } from './jobs.ts';

interface StillHolding {
  /** Path of the file, for showing where it lies. */
  file: string;
  kind: 'backup' | 'copy before a migration' | 'set aside';
}

export interface Holding {
  holding: StillHolding[];
  /** Files that this key does not open: they may hold the client too. */
  unknown: StillHolding[];
}

/** @param places further folders with backups, for example the USB stick */
export function whereClientsRemain(options: {
  folder: string;
  identity: Uint8Array;
  clientIds: readonly string[];
  places?: readonly string[];
}): Promise<Holding> {
  const { folder, clientIds, places = [] } = options;
  const identity = Buffer.from(options.identity);
  return refusing('backup-failed', async () => {
    try {
      const backups = [backupsFolder(folder), ...places].flatMap((place) =>
        backupNames(place).map(({ name }): StillHolding => ({ file: path.join(place, name), kind: 'backup' })),
      );
      const copies = existsSync(copiesFolder(folder)) ? readdirSync(copiesFolder(folder)) : [];
      const databases: StillHolding[] = [
        ...copies.map((name) => ({
          file: path.join(copiesFolder(folder), name),
          kind: 'copy before a migration' as const,
        })),
        ...listAside(folder).map((name) => ({
          file: path.join(setAsideFolder(folder), name, 'caseload.db'),
          kind: 'set aside' as const,
        })),
      ];
      const inBackups = await runBackupJob({ kind: 'manifests', files: backups.map((each) => each.file), identity });
      const manifests = inBackups.kind === 'manifests' ? inBackups.manifests : [];
      const gone = new Set(clientIds);
      const files = databases.map((each) => each.file);
      const inDatabases = await runBackupJob({ kind: 'holding', files, clientIds, identity });
      const holds = inDatabases.kind === 'holding' ? inDatabases.holds : [];
      const answers = [
        ...backups.map((each, n) => [each, manifests[n]?.clientIds.some((id) => gone.has(id)) ?? null] as const),
        ...databases.map((each, n) => [each, holds[n] ?? null] as const),
      ];
      return {
        holding: answers.filter(([, answer]) => answer === true).map(([each]) => each),
        unknown: answers.filter(([, answer]) => answer === null).map(([each]) => each),
      };
    } finally {
      identity.fill(0);
    }
  });
}
