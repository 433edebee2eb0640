/** Bringing a backup in: looked at first, never in the place of another, nothing left behind. */
import { mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { expect, test } from 'vitest';
import { makeBackup, restoreBackup } from '../../../electron/files/backup/backup.ts';
import { backupsFolder } from '../../../electron/files/backup/backup-list.ts';
import { bringBackup } from '../../../electron/files/backup/backup-bring.ts';
import { client, doing, newCaseload, newFolder, NOW, PASSPHRASE } from '../../db/support.ts';

async function backup() {
  const caseload = await newCaseload();
  caseload.put('client', client(), doing);
  const { name } = await caseload.withKey((identity) => makeBackup({ folder: caseload.folder, identity, now: NOW }));
  const place = backupsFolder(caseload.folder);
  return { caseload, name, place, bytes: readFileSync(path.join(place, name)) };
}

test('garbage under the name of a good backup is refused; the good one keeps every byte', async () => {
  const { name, place, bytes } = await backup();
  const cut = bytes.subarray(0, bytes.length / 2);
  const blank = Buffer.from(bytes);
  blank.fill(0, 512 * 3);
  for (const bad of [Buffer.from('garbage'), Buffer.alloc(0), cut, blank]) {
    await expect(bringBackup(place, name, bad)).rejects.toThrow('not-a-backup');
    expect(readdirSync(place)).toEqual([name]);
    expect(readFileSync(path.join(place, name)).equals(bytes)).toBe(true);
  }
});

test('another backup of the same name is counted up; the same file twice stays one', async () => {
  const { caseload, name, place, bytes } = await backup();
  const other = await backup();
  expect(await bringBackup(place, name, bytes)).toBe(name);
  expect(readdirSync(place)).toEqual([name]);
  const second = name.replace('.fhbackup', '-2.fhbackup');
  expect(await bringBackup(place, name, other.bytes)).toBe(second);
  expect(await bringBackup(place, name, other.bytes)).toBe(second);
  expect(readdirSync(place).sort()).toEqual([second, name].sort());
  expect(readFileSync(path.join(place, name)).equals(bytes)).toBe(true);
  caseload.close();
  const { keptAs } = await restoreBackup({
    folder: caseload.folder,
    file: path.join(place, second),
    passphrase: PASSPHRASE,
    now: NOW,
  });
  expect(keptAs).not.toBe('');
});

test('names that are none of ours, and names that would leave the folder, are refused', async () => {
  const { bytes } = await backup();
  const place = path.join(newFolder(), 'backups');
  mkdirSync(place);
  writeFileSync(path.join(place, '..', 'kept'), 'kept');
  for (const name of ['../kept', 'holiday.tar', 'caseload-20260304T091200Z-hand.tar/../../kept', '']) {
    await expect(bringBackup(place, name, bytes)).rejects.toThrow('not-a-backup');
  }
  expect(readdirSync(place)).toEqual([]);
});
