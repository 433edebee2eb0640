import { execFileSync } from 'node:child_process';
import { mkdirSync, readdirSync, readFileSync, statSync } from 'node:fs';
import path from 'node:path';
import { expect, test } from 'vitest';
import { caseloadFile } from '../../db/files.ts';
import { newFolder, NOW, PASSPHRASE, QUICK } from './support.ts';

const CANARY = 'Ptolemaic-Heliotrope-7731';

function* filesUnder(folder: string): Generator<string> {
  for (const entry of readdirSync(folder, { withFileTypes: true })) {
    const full = path.join(folder, entry.name);
    if (entry.isDirectory()) yield* filesUnder(full);
    else if (entry.isFile()) yield full;
  }
}

test('a canary typed everywhere is in no file: caseload, log, backup, copies, salvage, temp folder, output', () => {
  const folder = newFolder();
  const temp = path.join(newFolder(), 'temp');
  mkdirSync(temp);
  const script = `
    import { createCaseload, openCaseload } from ${JSON.stringify(path.resolve('db/index.ts'))};
    import { readMigrations } from ${JSON.stringify(path.resolve('db/migrate.ts'))};
    import { salvage } from ${JSON.stringify(path.resolve('db/salvage.ts'))};
    import { makeBackup, restoreBackup } from ${JSON.stringify(path.resolve('electron/files/backup/backup.ts'))};
    import { backupsFolder } from ${JSON.stringify(path.resolve('electron/files/backup/backup-list.ts'))};
    import { client, visit } from ${JSON.stringify(path.resolve('tests/db/plain-facts.ts'))};
    const [folder, now, passphrase] = ${JSON.stringify([folder, NOW, PASSPHRASE])};
    const canary = process.env.CANARY;
    const doing = { at: now, by: 'MK' };
    const made = await createCaseload({ folder, passphrase, now, workFactor: ${QUICK} });
    const { caseload } = made;
    const { id } = caseload.put('client', client({ name: canary, note: canary.repeat(50) }), doing);
    for (let n = 0; n < 200; n++) caseload.put('visit', visit(id, { told: canary + n }), doing);
    caseload.putBlob(id, 'image/png', Buffer.from(canary.repeat(3000)), doing);
    caseload.putSetting('clinic', canary, doing);
    caseload.undo(id, doing);
    caseload.search(canary);
    const identity = caseload.withKey((key) => Buffer.from(key));
    const { name } = await makeBackup({ folder, identity, now });
    for (const bad of [() => caseload.put('visit', { ...visit(id), date: canary }, doing), () => caseload.record(canary)]) {
      try { bad(); } catch (error) { console.log(String(error), error.detail, JSON.stringify(error)); }
    }
    caseload.close();
    const migrations = [...readMigrations(), { version: readMigrations().length + 1, name: 'x', sql: 'CREATE TABLE x (a TEXT) STRICT;' }];
    const migrated = await openCaseload({ folder, passphrase, now, migrations });
    migrated.caseload.close();
    await restoreBackup({ folder, file: backupsFolder(folder) + '/' + name, passphrase, now });
    salvage({ folder, identity, now });
    // Left open and killed: the log stays behind.
    const again = await openCaseload({ folder, passphrase, now });
    again.caseload.put('visit', visit(id, { told: canary }), doing);
    process.kill(process.pid, 'SIGKILL');`;
  let output: string;
  try {
    output = execFileSync(process.execPath, ['--no-warnings', '--input-type=module', '-e', script], {
      encoding: 'utf8',
      env: { ...process.env, CANARY, TMPDIR: temp, SQLITE_TMPDIR: temp },
      stdio: ['ignore', 'pipe', 'pipe'],
    });
  } catch (error) {
    const ended = error as { signal: string; stdout: string; stderr: string };
    expect(ended.signal, ended.stderr).toBe('SIGKILL');
    output = ended.stdout + ended.stderr;
  }
  expect(output).toContain('malformed-request');
  expect(output).not.toContain(CANARY);
  const files = [...filesUnder(folder), ...filesUnder(temp)];
  const names = files.map((file) => path.relative(folder, file));
  expect(names.some((name) => name.startsWith('copies/'))).toBe(true);
  expect(names.some((name) => name.startsWith('backups/'))).toBe(true);
  expect(names.some((name) => name.includes('salvaged'))).toBe(true);
  expect(statSync(`${caseloadFile(folder)}-wal`).size).toBeGreaterThan(0);
  for (const file of files) {
    const bytes = readFileSync(file);
    for (const word of [
      CANARY,
      CANARY.toLowerCase(),
      Buffer.from(CANARY).toString('base64').slice(0, 24),
      PASSPHRASE,
    ]) {
      expect(bytes.includes(word), `${file}: ${word}`).toBe(false);
    }
    expect(path.basename(file)).not.toContain('Ptolemaic');
  }
});

test('what Fairhand writes is readable by its user only', () => {
  if (process.platform === 'win32') return;
  const folder = newFolder();
  const script = `
    import { createCaseload } from ${JSON.stringify(path.resolve('db/index.ts'))};
    import { makeBackup } from ${JSON.stringify(path.resolve('electron/files/backup/backup.ts'))};
    process.umask(0o022);
    const folder = ${JSON.stringify(path.join(folder, 'new'))}, now = ${JSON.stringify(NOW)};
    const made = await createCaseload({ folder, passphrase: ${JSON.stringify(PASSPHRASE)}, now, workFactor: ${QUICK} });
    await makeBackup({ folder, identity: made.caseload.withKey((key) => Buffer.from(key)), now });
    process.kill(process.pid, 'SIGKILL');`;
  try {
    execFileSync(process.execPath, ['--no-warnings', '--input-type=module', '-e', script], { stdio: 'pipe' });
  } catch (error) {
    expect((error as { signal: string; stderr: Buffer }).signal, String((error as { stderr: Buffer }).stderr)).toBe(
      'SIGKILL',
    );
  }
  const made = path.join(folder, 'new');
  expect(statSync(made).mode & 0o777).toBe(0o700);
  expect(statSync(path.join(made, 'backups')).mode & 0o777).toBe(0o700);
  for (const file of filesUnder(made)) expect((statSync(file).mode & 0o077).toString(8), file).toBe('0');
});
