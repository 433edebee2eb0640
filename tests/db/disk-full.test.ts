import { execFileSync } from 'node:child_process';
import { mkdirSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { expect, test } from 'vitest';
import { codeOf } from '../../db/errors.ts';
import { createCaseload, openCaseload } from '../../db/index.ts';
import { makeBackup } from '../../electron/files/backup/backup.ts';
import { backupsFolder } from '../../electron/files/backup/backup-list.ts';
import { client, doing, newFolder, NOW, PASSPHRASE, QUICK } from './support.ts';

/** A disk of one size, in memory; null where this user may not mount one. */
function smallDisk(size: string): { folder: string; free(): void } | null {
  const folder = path.join(newFolder(), 'disk');
  mkdirSync(folder);
  try {
    execFileSync('mount', ['-t', 'tmpfs', '-o', `size=${size}`, 'tmpfs', folder], { stdio: 'ignore' });
  } catch {
    return null;
  }
  return { folder, free: () => void execFileSync('umount', ['-l', folder]) };
}

test('a disk that fills up: refused in a sentence, everything saved before is there, and it goes on after space is made', async (context) => {
  const disk = smallDisk('3m');
  if (!disk) return context.skip('no small disk can be mounted here (needs root on Linux)');
  const folder = path.join(disk.folder, 'caseload');
  const ballast = path.join(disk.folder, 'ballast');
  try {
    const created = await createCaseload({ folder, passphrase: PASSPHRASE, now: NOW, workFactor: QUICK });
    if (!created.ok) throw new Error(created.code);
    const { caseload } = created;
    const { id } = caseload.put('client', client(), doing);
    writeFileSync(ballast, Buffer.alloc(1024 * 1024));
    let kept = 0;
    const fill = (): void => {
      for (let n = 0; n < 400; n++) {
        caseload.put('client', client({ note: 'x'.repeat(7000) }), doing);
        kept++;
      }
    };
    expect(fill).toThrow('disk-full');
    expect(caseload.counts()).toMatchObject({ client: kept + 1 });
    expect(caseload.record(id).client.id).toBe(id);
    expect(caseload.verifyTrail().whole).toBe(true);
    await expect(caseload.withKey((identity) => makeBackup({ folder, identity, now: NOW }))).rejects.toThrow(
      'disk-full',
    );
    expect(readdirSync(backupsFolder(folder))).toEqual([]);
    rmSync(ballast);
    caseload.put('client', client(), doing);
    caseload.close();
    const opened = await openCaseload({ folder, passphrase: PASSPHRASE, now: NOW });
    if (!opened.ok) throw new Error(opened.code);
    expect(opened.caseload.counts()).toMatchObject({ client: kept + 2 });
    expect(opened.caseload.quickCheck()).toBe('ok');
    opened.caseload.close();
  } finally {
    disk.free();
  }
});

test('creating on a full disk leaves nothing behind', async (context) => {
  const disk = smallDisk('64k');
  if (!disk) return context.skip('no small disk can be mounted here (needs root on Linux)');
  try {
    const created = await createCaseload({ folder: disk.folder, passphrase: PASSPHRASE, now: NOW, workFactor: QUICK });
    expect(created).toEqual({ ok: false, code: 'disk-full' });
    expect(readdirSync(disk.folder).filter((name) => name !== 'caseload.lock')).toEqual([]);
  } finally {
    disk.free();
  }
});

test('what systems say about full disks and closed doors becomes one of our codes', () => {
  const says = (code: string) => codeOf(Object.assign(new Error('x'), { code }));
  expect(['ENOSPC', 'EDQUOT', 'SQLITE_FULL', 'SQLITE_IOERR_SHMSIZE'].map(says)).toEqual(Array(4).fill('disk-full'));
  // A write to a protected file is refused with EPERM, which the database tells as IOERR_WRITE.
  expect(['EACCES', 'EROFS', 'SQLITE_READONLY_DIRECTORY', 'SQLITE_CANTOPEN', 'SQLITE_IOERR_WRITE'].map(says)).toEqual(
    Array(5).fill('folder-not-writable'),
  );
  expect(['SQLITE_CORRUPT_INDEX', 'SQLITE_NOTADB', 'SQLITE_IOERR_SHORT_READ'].map(says)).toEqual(
    Array(3).fill('damaged'),
  );
  expect(['SQLITE_BUSY', 'SQLITE_BUSY_SNAPSHOT', 'SQLITE_LOCKED'].map(says)).toEqual(
    Array(3).fill('locked-by-another'),
  );
  expect([codeOf(new Error('x')), codeOf('x'), codeOf(null), says('EIO')]).toEqual(Array(4).fill('internal'));
});
