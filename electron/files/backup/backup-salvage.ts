/** What can be done when the caseload file is damaged and no backup is new enough: read what can still be read. */
import { takeFolderLock } from '../../../db/folder-lock.ts';
import { unlock } from '../../../db/open.ts';
import type { Salvage } from '../../../db/salvage.ts';
import { Refusal } from '../../contract/envelope.ts';
import { refusing } from './backup-list.ts';
import { runBackupJob, type BackupHooks } from './jobs.ts';

/**
 * Salvages into `set-aside/<name>`, in the worker, and says how much was read. Nothing else changes:
 * `undoRestore(folder, name, now)` makes the salvaged copy the caseload and sets the damaged file aside.
 * @throws Refusal wrong-passphrase, key-file-missing, locked-by-another, damaged (nothing can be read), disk-full
 */
export function salvageCaseload(
  options: { folder: string; passphrase: string; now: string } & BackupHooks,
): Promise<Salvage> {
  const { folder, passphrase, now, onProgress, signal } = options;
  return refusing('damaged', async () => {
    const { secrets } = await unlock(folder, { passphrase });
    const lock = takeFolderLock(folder);
    try {
      if (!lock) throw new Refusal('locked-by-another');
      // While the key was being changed two secrets may fit: the one that opens the file is found by trying.
      let answer = null;
      for (const { identity } of secrets) {
        answer = await runBackupJob({ kind: 'salvage', folder, now, identity }, { onProgress, signal }).catch(
          (error: unknown) => {
            if (identity === secrets.at(-1)?.identity) throw error;
            return null;
          },
        );
        if (answer) break;
      }
      if (answer?.kind !== 'salvage') throw new Refusal('damaged');
      return answer.salvaged;
    } finally {
      for (const { identity } of secrets) identity.fill(0);
      lock?.release();
    }
  });
}
