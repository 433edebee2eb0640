/**
 * Backups against another implementation of the age format (age-encryption.org/v1): the Go program `age`, as Debian
 * packages it. What it opens, nobody needs Fairhand for.
 */
import { execFileSync, spawnSync } from 'node:child_process';
import { readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { expect, test } from 'vitest';
import { makeBackup } from '../../electron/files/backup/backup.ts';
import { backupsFolder } from '../../electron/files/backup/backup-list.ts';
import { client, doing, newCaseload, newFolder, NOW, PASSPHRASE } from '../db/support.ts';

const has = (program: string): boolean => spawnSync('sh', ['-c', `command -v ${program}`]).status === 0;

/** A backup unpacked with tar, its key text saved as READ-ME.txt says. */
async function unpacked(): Promise<{ out: string; identity: string; id: string }> {
  const caseload = await newCaseload();
  const { id } = caseload.put('client', client({ name: 'Opened Elsewhere' }), doing);
  caseload.putBlob(id, 'image/png', Buffer.alloc(200_000, 5), doing);
  const { folder } = caseload;
  const identity = caseload.withKey((key) => Buffer.from(key).toString());
  const { name } = await caseload.withKey((key) => makeBackup({ folder, identity: key, now: NOW }));
  const out = newFolder();
  execFileSync('tar', ['-xf', path.join(backupsFolder(folder), name), '-C', out]);
  const key = JSON.parse(readFileSync(path.join(out, 'key.json'), 'utf8')) as { passphrase: string };
  writeFileSync(path.join(out, 'identity.age'), key.passphrase);
  return { out, identity, id };
}

const nameIn = (out: string): string => {
  execFileSync('tar', ['-xf', path.join(out, 'caseload.tar'), '-C', out]);
  const line = readFileSync(path.join(out, 'rows/client-0001.jsonl'), 'utf8').trim();
  return (JSON.parse((JSON.parse(line) as { body: string }).body) as { name: string }).name;
};

test('the Go program opens a backup with the key', async (context) => {
  if (!has('age')) return context.skip('the program age is not installed (Debian package age)');
  const { out, identity } = await unpacked();
  writeFileSync(path.join(out, 'identity.txt'), `${identity}\n`, { mode: 0o600 });
  execFileSync('age', ['-d', '-i', 'identity.txt', '-o', 'caseload.tar', 'caseload.age'], { cwd: out });
  expect(nameIn(out)).toBe('Opened Elsewhere');
});

test('the Go program opens a backup with the passphrase alone, as READ-ME.txt says', async (context) => {
  if (!has('age') || !has('script')) return context.skip('needs the programs age and script');
  const { out } = await unpacked();
  // age asks on the terminal only: `script` gives it one.
  const command = 'age -d -i identity.age -o caseload.tar caseload.age';
  const run = spawnSync('script', ['-qec', `sleep 1; ${command}`, '/dev/null'], {
    cwd: out,
    input: `${PASSPHRASE}\n`,
    encoding: 'utf8',
    timeout: 60_000,
  });
  expect(run.status, run.stdout).toBe(0);
  expect(nameIn(out)).toBe('Opened Elsewhere');
});
