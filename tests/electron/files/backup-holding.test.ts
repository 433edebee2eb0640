import path from 'node:path';
import { writeFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { makeBackup, restoreBackup } from '../../../electron/files/backup/backup.ts';
import { backupsFolder } from '../../../electron/files/backup/backup-list.ts';
import { whereClientsRemain } from '../../../electron/files/backup/backup-holding.ts';
import { client, doing, newCaseload, NOW, PASSPHRASE, reopen } from '../../db/support.ts';

test('after erasing, the backups and the set-aside file that still hold the client are named, later ones are not', async () => {
  const caseload = await newCaseload();
  const { folder } = caseload;
  const { id } = caseload.put('client', client(), doing);
  const before = await caseload.withKey((identity) => makeBackup({ folder, identity, now: NOW }));
  caseload.close();
  await restoreBackup({
    folder,
    file: path.join(backupsFolder(folder), before.name),
    passphrase: PASSPHRASE,
    now: NOW,
  });
  const again = await reopen(folder);
  again.erase(id, doing);
  const after = await again.withKey((identity) => makeBackup({ folder, identity, now: '2026-03-05T09:00:00.000Z' }));
  const foreign = path.join(backupsFolder(folder), 'caseload-20200101T000000Z-hand.tar');
  writeFileSync(foreign, 'not ours');
  const { holding, unknown } = await again.withKey((identity) =>
    whereClientsRemain({ folder, identity, clientIds: [id] }),
  );
  expect(holding.map((each) => [path.relative(folder, each.file), each.kind])).toEqual([
    [path.join('backups', before.name), 'backup'],
    [path.join('set-aside', '20260304T091200Z', 'caseload.db'), 'set aside'],
  ]);
  expect(unknown.map((each) => each.file)).toEqual([foreign]);
  expect(holding.some((each) => each.file.endsWith(after.name))).toBe(false);
});
