import Database from 'better-sqlite3';
import { createHash } from 'node:crypto';
import {
  chmodSync,
  copyFileSync,
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  rmSync,
  truncateSync,
  writeFileSync,
} from 'node:fs';
import path from 'node:path';
import { execFileSync } from 'node:child_process';
import { expect, test } from 'vitest';
import { openFile, pragmas } from '../../db/connection.ts';
import { caseloadFile, keyFile, keyFileCopy } from '../../db/files.ts';
import { createCaseload, openCaseload } from '../../db/index.ts';
import { client, doing, newCaseload, newFolder, NOW, PASSPHRASE, QUICK, reopen } from './support.ts';

const CANARY = 'Zyxomma Quillfeather';

/** A closed caseload with one client. */
async function closedCaseload(): Promise<string> {
  const caseload = await newCaseload();
  caseload.put('client', client({ name: CANARY, code: 'ZQ' }), doing);
  caseload.close();
  return caseload.folder;
}

const digest = (file: string): string => createHash('sha256').update(readFileSync(file)).digest('hex');
const open = (folder: string, passphrase = PASSPHRASE) => openCaseload({ folder, passphrase, now: NOW });

test('what was saved is there after closing and opening', async () => {
  const folder = await closedCaseload();
  const caseload = await reopen(folder);
  expect(caseload.clients().map((row) => row.name)).toEqual([CANARY]);
});

test('nothing in the folder shows a name, and the file is no plain SQLite file', async () => {
  const caseload = await newCaseload();
  caseload.put('client', client({ name: CANARY }), doing);
  const files = readdirSync(caseload.folder);
  expect(files).toContain('caseload.db-wal');
  for (const name of files) {
    const bytes = readFileSync(path.join(caseload.folder, name));
    expect(bytes.includes('Zyxomma'), name).toBe(false);
    if (name.startsWith('caseload.db')) expect(bytes.includes('SQLite format 3'), name).toBe(false);
  }
  caseload.close();
  const plain = new Database(caseloadFile(caseload.folder));
  expect(() => plain.prepare('SELECT * FROM sqlite_schema').all()).toThrow(/not a database/);
  plain.close();
});

test('every pragma reads back as set, and an ignored one is refused', async () => {
  const caseload = await newCaseload();
  caseload.withKey((identity) => {
    const db = openFile(caseloadFile(caseload.folder), identity);
    for (const [name, , value] of pragmas) expect(db.pragma(name, { simple: true }), name).toBe(value);
    expect(db.pragma('application_id', { simple: true })).toBe(0x46616972);
    expect(
      db
        .prepare(
          "SELECT count(*) FROM pragma_table_list WHERE schema = 'main' AND strict = 0 AND name NOT LIKE 'sqlite_%'",
        )
        .pluck()
        .get(),
    ).toBe(0);
    db.close();
  });
});

test('a wrong passphrase is told apart from damage and changes nothing', async () => {
  const folder = await closedCaseload();
  const before = digest(caseloadFile(folder));
  expect(await open(folder, 'oak kettle seven lantern')).toEqual({ ok: false, code: 'wrong-passphrase' });
  expect(digest(caseloadFile(folder))).toBe(before);
  expect((await open(folder, `  ${PASSPHRASE} `)).ok).toBe(true);
});

test('text over the file, half a file, an empty file and a smashed page are damage', async () => {
  const smashPage = (file: string): void => {
    const bytes = readFileSync(file);
    bytes.fill(0x5a, 4096 * 3 + 100, 4096 * 3 + 400);
    writeFileSync(file, bytes);
  };
  const harms: ((file: string) => void)[] = [
    (file) => writeFileSync(file, 'This was a shopping list.\n'.repeat(4000)),
    (file) => truncateSync(file, Math.floor(readFileSync(file).length / 2 / 4096) * 4096 + 17),
    (file) => truncateSync(file, 0),
    smashPage,
  ];
  for (const harm of harms) {
    const folder = await closedCaseload();
    harm(caseloadFile(folder));
    const before = digest(caseloadFile(folder));
    expect(await open(folder)).toEqual({ ok: false, code: 'damaged' });
    expect(digest(caseloadFile(folder))).toBe(before);
    // The key still opens the key file: a typing error would say so.
    expect(await open(folder, 'something else entirely')).toEqual({ ok: false, code: 'wrong-passphrase' });
  }
});

test('a lost or damaged key file is made good from its copy; without either the caseload says so', async () => {
  const folder = await closedCaseload();
  writeFileSync(keyFile(folder), readFileSync(keyFile(folder), 'utf8').replace('AGE', 'EGA'));
  (await reopen(folder)).close();
  rmSync(keyFile(folder));
  (await reopen(folder)).close();
  expect(readFileSync(keyFile(folder), 'utf8')).toBe(readFileSync(keyFileCopy(folder), 'utf8'));
  rmSync(keyFile(folder));
  writeFileSync(keyFileCopy(folder), '{}');
  expect(await open(folder)).toEqual({ ok: false, code: 'key-file-missing' });
  rmSync(keyFileCopy(folder));
  expect(await open(folder)).toEqual({ ok: false, code: 'key-file-missing' });
});

test('the recovery key opens the caseload however it was typed', async () => {
  const folder = newFolder();
  const created = await createCaseload({ folder, passphrase: PASSPHRASE, now: NOW, workFactor: QUICK });
  if (!created.ok) throw new Error(created.code);
  created.caseload.close();
  expect(created.recoveryKey).toMatch(/^([0-9A-HJKMNP-TV-Z]{4}-){7}[0-9A-HJKMNP-TV-Z]{4}$/);
  const typed = created.recoveryKey.toLowerCase().replaceAll('-', ' ').replaceAll('0', 'o').replaceAll('1', 'l');
  const opened = await openCaseload({ folder, recoveryKey: typed, now: NOW });
  expect(opened.ok).toBe(true);
  if (opened.ok) opened.caseload.close();
  expect(await openCaseload({ folder, recoveryKey: 'AAAA-BBBB', now: NOW })).toEqual({
    ok: false,
    code: 'wrong-passphrase',
  });
});

test('an empty folder has no caseload, and creating twice is refused', async () => {
  const folder = newFolder();
  expect(await open(folder)).toEqual({ ok: false, code: 'no-caseload' });
  const caseload = await newCaseload(folder);
  caseload.close();
  const again = await createCaseload({ folder, passphrase: PASSPHRASE, now: NOW, workFactor: QUICK });
  expect(again).toEqual({ ok: false, code: 'caseload-exists' });
});

test('a short passphrase is refused before anything is written', async () => {
  const folder = newFolder();
  const created = await createCaseload({ folder, passphrase: '   elevenchars  ', now: NOW });
  expect(created).toEqual({ ok: false, code: 'passphrase-too-short' });
  expect(readdirSync(folder)).toEqual([]);
});

test('a caseload that is open is not opened twice', async () => {
  const caseload = await newCaseload();
  expect(await open(caseload.folder)).toEqual({ ok: false, code: 'locked-by-another' });
  caseload.close();
  expect((await open(caseload.folder)).ok).toBe(true);
});

test('a file of a newer Fairhand is refused unharmed', async () => {
  const caseload = await newCaseload();
  caseload.withKey((identity) => {
    const db = openFile(caseloadFile(caseload.folder), identity);
    db.pragma('user_version = 99');
    db.close();
  });
  caseload.close();
  const before = digest(caseloadFile(caseload.folder));
  expect(await open(caseload.folder)).toEqual({ ok: false, code: 'newer-version' });
  expect(digest(caseloadFile(caseload.folder))).toBe(before);
  expect(existsSync(path.join(caseload.folder, 'copies'))).toBe(false);
});

test('a SQLite file of another program is not taken for a caseload', async () => {
  const folder = await closedCaseload();
  const other = newFolder();
  const foreign = await newCaseload(other);
  foreign.close();
  copyFileSync(caseloadFile(other), caseloadFile(folder));
  expect(await open(folder)).toEqual({ ok: false, code: 'damaged' });
});

test('a folder that cannot be written is refused, for creating and for opening', async () => {
  const folder = await closedCaseload();
  const parent = newFolder();
  chmodSync(parent, 0o755);
  mkdirSync(path.join(parent, 'kept'), { mode: 0o755 });
  for (const name of readdirSync(folder)) {
    copyFileSync(path.join(folder, name), path.join(parent, 'kept', name));
    chmodSync(path.join(parent, 'kept', name), 0o644);
  }
  chmodSync(path.join(parent, 'kept'), 0o555);
  const script = `
    import { createCaseload, openCaseload } from ${JSON.stringify(path.resolve('db/index.ts'))};
    const at = { now: ${JSON.stringify(NOW)}, passphrase: ${JSON.stringify(PASSPHRASE)}, workFactor: 4 };
    const folder = ${JSON.stringify(path.join(parent, 'kept'))};
    console.log(JSON.stringify([await openCaseload({ folder, ...at }), await createCaseload({ folder: folder + '/new', ...at })]));`;
  // Root may write anywhere: the child runs as somebody who may not.
  const user = process.getuid?.() === 0 ? { uid: 65534, gid: 65534 } : {};
  const out = execFileSync(process.execPath, ['--input-type=module', '-e', script], {
    encoding: 'utf8',
    cwd: '/',
    ...user,
  });
  const refused = { ok: false, code: 'folder-not-writable' };
  expect(JSON.parse(out)).toEqual([refused, refused]);
  chmodSync(path.join(parent, 'kept'), 0o755);
});

test('after closing everything answers locked and the key is zeroed', async () => {
  const caseload = await newCaseload();
  let seen: Uint8Array = new Uint8Array();
  caseload.withKey((identity) => {
    seen = identity;
    expect(Buffer.from(identity).toString()).toMatch(/^AGE-SECRET-KEY-1/);
  });
  expect([...seen].every((byte) => byte === 0)).toBe(true);
  caseload.close();
  caseload.close();
  expect(() => caseload.clients()).toThrow('locked');
  expect(() => caseload.put('client', client(), doing)).toThrow('locked');
  expect(() => caseload.withKey(() => 0)).toThrow('locked');
});
