import { writeFileSync } from 'node:fs';
import path from 'node:path';
import { expect, test } from 'vitest';
import { autoBackup, rotate } from '../../../electron/files/backup/backup-auto.ts';
import { backupNames, backupsFolder } from '../../../electron/files/backup/backup-list.ts';
import { rewriteTrail } from '../../db/rewrite-trail.ts';
import { client, doing, newCaseload, newFolder } from '../../db/support.ts';

test('backups follow the changes: hourly, at closing, and to the second place while it is there', async () => {
  const caseload = await newCaseload();
  const second = newFolder();
  let now = new Date('2026-03-04T09:00:00.000Z');
  const done: string[] = [];
  const options = {
    caseload,
    now: () => now,
    second: () => second,
    onDone: (each: { ok: boolean; place?: string }) => done.push(each.ok ? each.place! : 'failed'),
  };
  const auto = await autoBackup(options);
  await auto.look();
  expect(done).toEqual([]);
  caseload.put('client', client(), doing);
  await Promise.all([auto.look(), auto.look()]);
  expect(done).toEqual(['first', 'second']);
  caseload.put('client', client(), doing);
  now = new Date('2026-03-04T09:30:00.000Z');
  await auto.look();
  expect(done).toHaveLength(2);
  await auto.ifChanged('close');
  await auto.ifChanged('close');
  expect(done).toHaveLength(4);
  // A new start knows how far the newest backup goes.
  const again = await autoBackup({ ...options, second: () => path.join(second, 'unplugged') });
  now = new Date('2026-03-04T12:00:00.000Z');
  await again.look();
  expect(done).toHaveLength(4);
  expect(backupNames(backupsFolder(caseload.folder)).map((each) => each.reason)).toEqual(['close']);
  expect(backupNames(second)).toHaveLength(1);
});

test('a history that was rewritten, every hash recomputed, is noticed by the backup that holds the true one', async () => {
  const caseload = await newCaseload();
  const options = { caseload, now: () => new Date('2026-03-04T09:00:00.000Z') };
  const { id } = caseload.put('client', client(), doing);
  await (await autoBackup(options)).ifChanged('close');
  expect((await autoBackup(options)).rewritten).toBe(false);
  caseload.put('client', client({ id, note: 'a later note' }), doing);
  expect((await autoBackup(options)).rewritten).toBe(false);
  // With the key: an old entry and all that follow it get new hashes; the chain by itself fits.
  caseload.withKey((identity) => rewriteTrail(caseload.folder, identity));
  expect((await autoBackup(options)).rewritten).toBe(true);
});

test('rotation deletes only what it may', () => {
  const place = newFolder();
  const names = [
    'caseload-20260304T080000Z-hour.tar',
    'caseload-20260304T090000Z-hour.tar',
    'caseload-20260304T070000Z-hand.tar',
  ];
  for (const name of [...names, 'letter.tar']) writeFileSync(path.join(place, name), '');
  expect(rotate(place, 0, '2026-03-05T00:00:00.000Z')).toEqual(['caseload-20260304T080000Z-hour.tar']);
  expect(backupNames(place)).toHaveLength(2);
});

test('stopping ends a running backup without a trace', async () => {
  const caseload = await newCaseload();
  caseload.put('client', client(), doing);
  const done: boolean[] = [];
  const auto = await autoBackup({ caseload, now: () => new Date(doing.at), onDone: (each) => done.push(each.ok) });
  const running = auto.look();
  await auto.stop();
  await running;
  expect(done).toEqual([false]);
  expect(backupNames(backupsFolder(caseload.folder))).toEqual([]);
});
