/** Backups by themselves keep each picture once beside them: written once, compared, restored, swept. */
import {
  copyFileSync,
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import path from 'node:path';
import { expect, test } from 'vitest';
import { openCaseload, type Caseload } from '../../../db/index.ts';
import { sweepStore } from '../../../electron/files/backup/backup-auto.ts';
import { bringBackup } from '../../../electron/files/backup/backup-bring.ts';
import { makeBackup, restoreBackup } from '../../../electron/files/backup/backup.ts';
import { backupsFolder, type BackupInfo } from '../../../electron/files/backup/backup-list.ts';
import { picturesFolder } from '../../../electron/files/backup/picture-store.ts';
import { client, doing, newCaseload, newFolder, PASSPHRASE } from '../../db/support.ts';

const picture = (n: number) => Buffer.alloc(200_000, `picture ${n} of Ada Invented `);

const hourly = (caseload: Caseload, hour: number): Promise<BackupInfo> =>
  caseload.withKey((identity) =>
    makeBackup({ folder: caseload.folder, identity, reason: 'hour', now: `2026-03-04T0${hour}:00:00.000Z` }),
  );
const stored = (place: string) => readdirSync(picturesFolder(place)).sort();

async function withPictures(count: number) {
  const caseload = await newCaseload();
  const { id } = caseload.put('client', client(), doing);
  const blobs = Array.from({ length: count }, (_, n) => caseload.putBlob(id, 'image/png', picture(n), doing));
  return { caseload, id, blobs, place: backupsFolder(caseload.folder) };
}

test('a picture is written once; the next backup holds what is new, and both restore every byte', async () => {
  const { caseload, id, blobs, place } = await withPictures(3);
  const first = await hourly(caseload, 1);
  const names = stored(place);
  expect(names).toHaveLength(3);
  expect(first.bytes).toBeLessThan(100_000);
  const times = names.map((name) => statSync(path.join(picturesFolder(place), name)).mtimeMs);
  const more = caseload.putBlob(id, 'image/png', picture(9), doing);
  const second = await hourly(caseload, 2);
  expect(stored(place)).toHaveLength(4);
  expect(names.map((name) => statSync(path.join(picturesFolder(place), name)).mtimeMs)).toEqual(times);
  // Nothing in names or bytes tells what they hold.
  for (const name of stored(place)) {
    const bytes = readFileSync(path.join(picturesFolder(place), name));
    expect(bytes.subarray(0, 21).toString()).toBe('age-encryption.org/v1');
    expect(bytes.includes('Ada Invented')).toBe(false);
    expect(blobs.some(({ sha256 }) => name.includes(sha256.slice(0, 12)))).toBe(false);
  }
  caseload.close();
  for (const [made, all] of [
    [first, blobs],
    [second, [...blobs, more]],
  ] as const) {
    const folder = newFolder();
    const now = '2026-03-05T00:00:00.000Z';
    await restoreBackup({ folder, file: path.join(place, made.name), passphrase: PASSPHRASE, now });
    const opened = await openCaseload({ folder, passphrase: PASSPHRASE, now });
    if (!opened.ok) throw new Error(opened.code);
    for (const blob of all) expect(opened.caseload.blob(blob.id)?.data.length).toBe(200_000);
    expect(opened.caseload.blob(blobs[2]!.id)?.data.equals(picture(2))).toBe(true);
    expect(opened.caseload.verifyTrail().whole).toBe(true);
    opened.caseload.close();
  }
});

test('without its pictures, or with one that was changed, a backup restores nothing and says why', async () => {
  const { caseload, place } = await withPictures(2);
  const { name } = await hourly(caseload, 1);
  caseload.close();
  const alone = path.join(newFolder(), name);
  copyFileSync(path.join(place, name), alone);
  const restore = (file: string) =>
    restoreBackup({ folder: newFolder(), file, passphrase: PASSPHRASE, now: '2026-03-05T00:00:00.000Z' });
  await expect(restore(alone)).rejects.toThrow('backup-pictures-missing');
  const [one, other] = stored(place).map((each) => path.join(picturesFolder(place), each)) as [string, string];
  const whole = readFileSync(one);
  copyFileSync(other, one);
  await expect(restore(path.join(place, name))).rejects.toThrow('not-a-backup');
  const spoiled = Buffer.from(whole);
  spoiled[spoiled.length - 40]! ^= 1;
  writeFileSync(one, spoiled);
  await expect(restore(path.join(place, name))).rejects.toThrow('not-a-backup');
  writeFileSync(one, whole);
  await restore(path.join(place, name));
});

test('brought by its path a backup brings its pictures; a backup by hand holds them itself', async () => {
  const { caseload, blobs, place } = await withPictures(2);
  const { name } = await hourly(caseload, 1);
  const byHand = await caseload.withKey((identity) =>
    makeBackup({ folder: caseload.folder, identity, now: '2026-03-04T02:00:00.000Z' }),
  );
  expect(byHand.bytes).toBeGreaterThan(400_000);
  caseload.close();
  const elsewhere = backupsFolder(newFolder());
  const brought = await bringBackup(elsewhere, name, path.join(place, name));
  expect(stored(elsewhere)).toEqual(stored(place));
  // What is no backup brings nothing, however many pictures lie beside it.
  const wrong = path.join(place, 'caseload-20260304T030000Z-hour.fhbackup');
  writeFileSync(wrong, 'no backup');
  const third = backupsFolder(newFolder());
  await expect(bringBackup(third, path.basename(wrong), wrong)).rejects.toThrow('not-a-backup');
  expect(readdirSync(third)).toEqual([]);
  const alone = path.join(newFolder(), byHand.name);
  copyFileSync(path.join(place, byHand.name), alone);
  for (const file of [path.join(elsewhere, brought), alone]) {
    const folder = newFolder();
    await restoreBackup({ folder, file, passphrase: PASSPHRASE, now: '2026-03-05T00:00:00.000Z' });
    const opened = await openCaseload({ folder, passphrase: PASSPHRASE, now: '2026-03-05T00:00:00.000Z' });
    if (!opened.ok) throw new Error(opened.code);
    expect(opened.caseload.blob(blobs[1]!.id)?.data.equals(picture(1))).toBe(true);
    opened.caseload.close();
  }
});

test('pictures go when no backup names them; where one backup cannot be asked, all stay', async () => {
  const { caseload, id, place } = await withPictures(2);
  const first = await hourly(caseload, 1);
  caseload.erase(id, doing);
  await hourly(caseload, 2);
  const sweep = () => caseload.withKey((identity) => sweepStore(place, identity));
  mkdirSync(picturesFolder(place), { recursive: true });
  writeFileSync(path.join(picturesFolder(place), 'half.age.part'), 'cut off');
  await sweep();
  // The first backup still holds the erased client.
  expect(stored(place)).toHaveLength(2);
  const foreign = path.join(place, 'caseload-20200101T000000Z-hour.fhbackup');
  rmSync(path.join(place, first.name));
  writeFileSync(foreign, 'of another key');
  await sweep();
  expect(stored(place)).toHaveLength(2);
  rmSync(foreign);
  await sweep();
  expect(stored(place)).toEqual([]);
  expect(existsSync(path.join(place, first.name))).toBe(false);
  caseload.close();
});
