import { mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { expect, test } from 'vitest';
import { createFile, openFile, openReader } from '../../db/connection.ts';
import { dump, manifestOf } from '../../db/dump.ts';
import { caseloadFile, copiesFolder } from '../../db/files.ts';
import { openCaseload } from '../../db/index.ts';
import { migrate, readMigrations, versionOf, type Migration } from '../../db/migrate.ts';
import { client, doing, newCaseload, newFolder, NOW, PASSPHRASE } from './support.ts';

const next = (version: number, sql: string): Migration => ({ version, name: `${version}-test.sql`, sql });
const shipped = readMigrations();
const after = shipped.length + 1;

async function closed(): Promise<{ folder: string; identity: Buffer }> {
  const caseload = await newCaseload();
  caseload.put('client', client({ name: 'Before Migration' }), doing);
  const identity = caseload.withKey((key) => Buffer.from(key));
  caseload.close();
  return { folder: caseload.folder, identity };
}

test('a migration runs once, and a whole encrypted copy from before it is kept', async () => {
  const { folder, identity } = await closed();
  const migrations = [...shipped, next(after, 'CREATE TABLE extra (a TEXT) STRICT; INSERT INTO extra VALUES (1);')];
  for (let times = 0; times < 2; times++) {
    const opened = await openCaseload({ folder, passphrase: PASSPHRASE, now: NOW, migrations });
    if (!opened.ok) throw new Error(opened.code);
    expect(opened.caseload.schemaVersion).toBe(after);
    opened.caseload.close();
  }
  const copies = readdirSync(copiesFolder(folder));
  expect(copies).toEqual([`before-${String(after).padStart(4, '0')}-20260304T091200Z.db`]);
  const copy = openReader(path.join(copiesFolder(folder), copies[0]!), identity);
  expect(versionOf(copy)).toBe(shipped.length);
  expect(copy.prepare('SELECT name FROM client').pluck().all()).toEqual(['Before Migration']);
  copy.close();
  // The older program meets the newer file and leaves it alone.
  expect(await openCaseload({ folder, passphrase: PASSPHRASE, now: NOW })).toEqual({
    ok: false,
    code: 'newer-version',
  });
});

test('the first tables need no copy', async () => {
  const { folder } = await closed();
  expect(readdirSync(folder)).not.toContain('copies');
});

test('a migration that fails leaves the file as it was', async () => {
  const { folder, identity } = await closed();
  const bad = next(after, 'CREATE TABLE extra (a TEXT) STRICT; DELETE FROM client; INSERT INTO nowhere VALUES (1);');
  await expect(
    openCaseload({ folder, passphrase: PASSPHRASE, now: NOW, migrations: [...shipped, bad] }),
  ).rejects.toThrow('no such table');
  const db = openFile(caseloadFile(folder), identity);
  expect(versionOf(db)).toBe(shipped.length);
  expect(db.prepare('SELECT count(*) FROM client').pluck().get()).toBe(1);
  expect(db.prepare("SELECT count(*) FROM sqlite_schema WHERE name = 'extra'").pluck().get()).toBe(0);
  db.close();
});

test('a migration that leaves a row pointing at nothing is refused', async () => {
  const { folder } = await closed();
  const bad = next(
    after,
    `CREATE TABLE extra (client_id TEXT REFERENCES client (id)) STRICT;
    PRAGMA defer_foreign_keys = ON; INSERT INTO extra VALUES ('nobody');`,
  );
  const opened = await openCaseload({ folder, passphrase: PASSPHRASE, now: NOW, migrations: [...shipped, bad] });
  expect(opened).toEqual({ ok: false, code: 'damaged' });
});

test('migration files are numbered without a gap', () => {
  const folder = mkdtempSync(path.join(newFolder(), 'migrations-'));
  for (const name of ['0001-first.sql', '0003-third.sql']) writeFileSync(path.join(folder, name), 'SELECT 1;');
  expect(() => readMigrations(folder)).toThrow('0003-third.sql');
  rmSync(path.join(folder, '0003-third.sql'));
  writeFileSync(path.join(folder, '2-second.sql'), 'SELECT 1;');
  expect(() => readMigrations(folder)).toThrow('2-second.sql');
});

test('all facts of the newest version lie in strict tables', () => {
  for (const { sql, name } of shipped) {
    const tables = sql.match(/CREATE TABLE/g) ?? [];
    expect(sql.match(/\) STRICT;/g) ?? [], name).toHaveLength(tables.length);
  }
});

test('a file of any earlier version can be copied and counted: backups of that day are restored so', async () => {
  const { folder, identity } = await closed();
  const old = createFile(`${caseloadFile(folder)}.old`, identity);
  for (const { version } of shipped) {
    migrate(old, null, '', shipped, version);
    expect(manifestOf(old, NOW).counts['client'], String(version)).toBe(0);
    expect([...dump(old)].map(({ name }) => name).filter((name) => name.startsWith('rows/client-'))).toEqual([]);
  }
  old.close();
});
