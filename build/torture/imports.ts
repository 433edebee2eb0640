/** Brings spoiled backups and client files in, over names that are taken: nothing that was there before may change. */
import { createHash } from 'node:crypto';
import { readdirSync, readFileSync, rmSync } from 'node:fs';
import path from 'node:path';
import { bringBackup } from '../../electron/files/backup/backup-bring.ts';
import { makeBackup } from '../../electron/files/backup/backup.ts';
import { backupsFolder, readBackupName } from '../../electron/files/backup/backup-list.ts';
import { readClientFile, writeClientFile } from '../../electron/files/backup/client-file.ts';
import { fill } from './backups.ts';
import { freshCaseload, NOW } from './children.ts';
import { mutatedOften } from './fuzz/mutate.ts';
import { pick, seeded } from './random.ts';

export interface ImportReport {
  files: number;
  /** Backups that were taken in beside the others, and client files that were refused. */
  backupsTaken: number;
  clientsRefused: number;
  faults: string[];
}

export async function importTest(files: number, seed: number): Promise<ImportReport> {
  const random = seeded(seed);
  const report: ImportReport = { files, backupsTaken: 0, clientsRefused: 0, faults: [] };
  const caseload = await freshCaseload();
  const { folder } = caseload;
  const place = backupsFolder(folder);
  const doing = { at: NOW, by: 'TY' };
  try {
    const id = fill(caseload);
    const identity = caseload.withKey((key) => Buffer.from(key));
    const { name } = await makeBackup({ folder, identity, now: NOW });
    const good = readFileSync(path.join(place, name));
    const clientFile = path.join(folder, 'client.tar');
    await writeClientFile(caseload, id, clientFile, NOW);
    const record = readFileSync(clientFile);
    const sums = () =>
      new Map(
        readdirSync(place).map((each) => [
          each,
          createHash('sha256')
            .update(readFileSync(path.join(place, each)))
            .digest('hex'),
        ]),
      );
    for (let n = 0; n < files; n++) {
      const before = sums();
      const bytes = n % 7 === 0 ? good : mutatedOften(good, random);
      const as = pick(random, [name, 'caseload-20250101T000000Z-hand.tar', '../caseload.db', 'letter.pdf', '']);
      try {
        const taken = await bringBackup(place, as, bytes);
        report.backupsTaken++;
        if (!readBackupName(taken)) report.faults.push(`file ${n}: taken under the name ${taken}`);
        if (!readFileSync(path.join(place, taken)).equals(bytes)) report.faults.push(`file ${n}: other bytes`);
        if (!before.has(taken)) rmSync(path.join(place, taken));
      } catch (error) {
        if ((error as { code?: string }).code !== 'not-a-backup') report.faults.push(`file ${n}: ${String(error)}`);
      }
      if (JSON.stringify([...sums()]) !== JSON.stringify([...before]))
        report.faults.push(`file ${n}: the folder changed`);
      const entries = caseload.lastSeq();
      try {
        await readClientFile(caseload, mutatedOften(record, random), doing);
        report.faults.push(`file ${n}: a client that is here already was taken`);
      } catch {
        report.clientsRefused++;
      }
      if (caseload.lastSeq() !== entries) report.faults.push(`file ${n}: a refused client file left entries`);
    }
  } finally {
    caseload.close();
    rmSync(folder, { recursive: true, force: true });
  }
  return report;
}
