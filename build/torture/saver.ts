/** Backs up, or restores, over and over until it is killed. Arguments: folder, 'backup' or a backup file to restore. */
import { writeSync } from 'node:fs';
import { openCaseload } from '../../db/index.ts';
import { makeBackup, restoreBackup } from '../../electron/files/backup/backup.ts';

const [folder = '', what = 'backup'] = process.argv.slice(2);
const passphrase = process.env['FAIRHAND_PASSPHRASE'] ?? '';
const now = (): string => new Date().toISOString();

if (what === 'backup') {
  const opened = await openCaseload({ folder, passphrase, now: now() });
  if (!opened.ok) throw new Error(opened.code);
  for (;;) {
    writeSync(1, '.');
    await opened.caseload.withKey((identity) => makeBackup({ folder, identity, now: now(), reason: 'hour' }));
  }
}
for (;;) {
  writeSync(1, '.');
  await restoreBackup({ folder, file: what, passphrase, now: now() });
}
