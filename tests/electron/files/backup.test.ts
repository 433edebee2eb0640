import { Decrypter } from 'age-encryption';
import { mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { execFileSync } from 'node:child_process';
import { expect, test } from 'vitest';
import { caseloadFile } from '../../../db/files.ts';
import { openCaseload, rekeyCaseload, type Caseload } from '../../../db/index.ts';
import { makeBackup, restoreBackup, undoRestore } from '../../../electron/files/backup/backup.ts';
import {
  backupNames,
  backupsFolder,
  listBackups,
  listBackupsWith,
} from '../../../electron/files/backup/backup-list.ts';
import { tarHeader } from '../../../electron/files/backup/tar.ts';
import {
  client,
  doing,
  newCaseload,
  newFolder,
  NOW,
  page,
  PASSPHRASE,
  QUICK,
  reopen,
  sample,
  visit,
} from '../../db/support.ts';

const LATER = '2026-03-05T10:00:00.000Z';

async function lived(): Promise<{ caseload: Caseload; id: string; picture: Buffer }> {
  const caseload = await newCaseload();
  const { id } = caseload.put('client', client({ name: 'Wilhelmina Test', code: 'WT' }), doing);
  const { id: visitId } = caseload.put('visit', visit(id), doing);
  const taken = caseload.put('sample', sample(id, visitId), doing);
  const picture = Buffer.alloc(300_000, 'ink ');
  const blob = caseload.putBlob(id, 'image/png', picture, doing);
  caseload.put('samplePage', page({ clientId: id, visitId, sampleId: taken.id }, blob), doing);
  caseload.putSetting('clinic', 'Harbor Lane', doing);
  return { caseload, id, picture };
}

const backUp = (caseload: Caseload, now = NOW, more: { to?: string; signal?: AbortSignal } = {}) =>
  caseload.withKey((identity) => makeBackup({ folder: caseload.folder, identity, now, ...more }));
const fileOf = (folder: string, name: string): string => path.join(backupsFolder(folder), name);
const restore = (folder: string, file: string, passphrase = PASSPHRASE) =>
  restoreBackup({ folder, file, passphrase, now: LATER });

test('a backup is read back, listed with what it holds, and leaves nothing else behind', async () => {
  const { caseload } = await lived();
  const seen: string[] = [];
  const info = await caseload.withKey((identity) =>
    makeBackup({ folder: caseload.folder, identity, now: NOW, onProgress: (stage) => seen.push(stage) }),
  );
  expect(info).toMatchObject({
    name: 'caseload-20260304T091200Z-hand.fhbackup',
    at: NOW,
    clients: 1,
    lastVisit: '2026-03-04',
    verified: true,
  });
  expect(new Set(seen)).toEqual(new Set(['writing', 'checking']));
  expect(readdirSync(backupsFolder(caseload.folder))).toEqual([info.name]);
  expect(readdirSync(caseload.folder).filter((name) => name.includes('part'))).toEqual([]);
  const second = await backUp(caseload);
  expect(second.name).toBe('caseload-20260304T091200Z-hand-2.fhbackup');
  const place = backupsFolder(caseload.folder);
  const listed = await caseload.withKey((identity) => listBackups(place, identity));
  expect(listed).toHaveLength(2);
  expect(listed).toContainEqual(info);
  expect((await listBackups(place))[0]).toMatchObject({ clients: null, verified: false });
  expect(await listBackupsWith(place, PASSPHRASE)).toEqual(listed);
  await expect(listBackupsWith(place, 'not the passphrase')).rejects.toThrow('wrong-passphrase');
});

test('nothing in a backup can be read without the passphrase', async () => {
  const { caseload } = await lived();
  const info = await backUp(caseload);
  const bytes = readFileSync(fileOf(caseload.folder, info.name));
  for (const word of ['Wilhelmina', 'Harbor', 'ink ink', 'lastVisit', 'SQLite'])
    expect(bytes.includes(word), word).toBe(false);
});

test('a restored backup holds the same record, and the restore can be taken back', async () => {
  const { caseload, id, picture } = await lived();
  const before = caseload.record(id);
  const { name } = await backUp(caseload);
  caseload.put('visit', visit(id, { date: '2026-03-05' }), doing);
  const after = caseload.record(id);
  const { folder } = caseload;
  await expect(restore(folder, fileOf(folder, name))).rejects.toThrow('locked-by-another');
  caseload.close();
  const { keptAs } = await restore(folder, fileOf(folder, name));
  expect(keptAs).toBe('20260305T100000Z');
  const restored = await reopen(folder);
  expect(restored.record(id)).toEqual(before);
  expect(restored.blob(before.samplePages[0]!.blob)?.data).toEqual(picture);
  expect(restored.setting('clinic')).toBe('Harbor Lane');
  expect(restored.verifyTrail().whole).toBe(true);
  expect(restored.counts()).toMatchObject({ client: 1, visit: 1, blob: 1 });
  restored.close();
  await undoRestore(folder, keptAs, LATER);
  const back = await reopen(folder);
  expect(back.record(id)).toEqual(after);
  back.close();
  await expect(undoRestore(folder, '../backups', LATER)).rejects.toThrow('not-found');
});

test('a backup opens on an empty machine with its own passphrase or the recovery key', async () => {
  const { caseload, id } = await lived();
  const { name } = await backUp(caseload);
  const empty = path.join(newFolder(), 'new');
  await expect(restore(empty, fileOf(caseload.folder, name), 'wrong one, sorry')).rejects.toThrow('wrong-passphrase');
  expect(await restore(empty, fileOf(caseload.folder, name))).toEqual({ keptAs: '' });
  const restored = await reopen(empty);
  expect(restored.record(id).client.name).toBe('Wilhelmina Test');
});

test('a backup from before a change of passphrase needs the old one, which then opens what it brought back', async () => {
  const { caseload, id } = await lived();
  const { folder } = caseload;
  const { name } = await backUp(caseload);
  const next = 'nine lighthouses and a spoon';
  caseload.close();
  expect((await rekeyCaseload({ folder, passphrase: PASSPHRASE, next, now: NOW, workFactor: QUICK })).ok).toBe(true);
  await expect(restore(folder, fileOf(folder, name), next)).rejects.toThrow('wrong-passphrase');
  const { keptAs } = await restore(folder, fileOf(folder, name));
  const opened = await openCaseload({ folder, passphrase: PASSPHRASE, now: NOW });
  expect(opened.ok && opened.caseload.record(id).client.code).toBe('WT');
  if (opened.ok) opened.caseload.close();
  expect(keptAs).not.toBe('');
});

test("restoring another caseload's backup sets this one aside, with its own key", async () => {
  const { caseload, id } = await lived();
  const { name } = await backUp(caseload);
  const other = await newCaseload();
  const kept = other.put('client', client({ name: 'Kept Aside' }), doing);
  other.close();
  const { keptAs } = await restore(other.folder, fileOf(caseload.folder, name));
  const taken = await reopen(other.folder);
  expect(taken.clients().map((row) => row.id)).toEqual([id]);
  taken.close();
  await undoRestore(other.folder, keptAs, LATER);
  const back = await reopen(other.folder);
  expect(back.clients().map((row) => row.id)).toEqual([kept.id]);
});

test('a damaged caseload is set aside whole, companions included, when a backup takes its place', async () => {
  const { caseload, id } = await lived();
  const { name } = await backUp(caseload);
  const { folder } = caseload;
  caseload.close();
  writeFileSync(caseloadFile(folder), 'text over the file');
  writeFileSync(`${caseloadFile(folder)}-wal`, 'and over the log');
  expect(await openCaseload({ folder, passphrase: PASSPHRASE, now: NOW })).toEqual({ ok: false, code: 'damaged' });
  const { keptAs } = await restore(folder, fileOf(folder, name));
  const aside = path.join(folder, 'set-aside', keptAs);
  expect(readFileSync(path.join(aside, 'caseload.db'), 'utf8')).toBe('text over the file');
  expect(readFileSync(path.join(aside, 'caseload.db-wal'), 'utf8')).toBe('and over the log');
  expect((await reopen(folder)).record(id).client.code).toBe('WT');
});

test('a damaged, cut or foreign backup is refused and changes nothing', async () => {
  const { caseload, id } = await lived();
  const { name } = await backUp(caseload);
  const { folder } = caseload;
  caseload.close();
  const good = readFileSync(fileOf(folder, name));
  const bad = path.join(newFolder(), 'bad.tar');
  const flipped = Buffer.from(good);
  flipped[good.length - 60_000]! ^= 1;
  const harms: [what: string, bytes: Buffer][] = [
    ['empty', Buffer.alloc(0)],
    ['text', Buffer.from('shopping list '.repeat(1000))],
    ['cut', good.subarray(0, good.length - 40_000)],
    ['half', good.subarray(0, good.length / 2)],
    ['one bit', flipped],
    ['another tar', Buffer.concat([await tarHeader('a.txt', 0, 0), Buffer.alloc(1024)])],
  ];
  for (const [what, bytes] of harms) {
    writeFileSync(bad, bytes);
    await expect(restore(folder, bad), what).rejects.toThrow('not-a-backup');
    expect(readdirSync(folder).sort(), what).toEqual([
      'backups',
      'caseload.db',
      'caseload.key-copy.json',
      'caseload.key.json',
      'caseload.lock',
    ]);
  }
  await expect(restore(folder, path.join(folder, 'nothing.tar'))).rejects.toThrow('not-a-backup');
  await expect(restore(folder, folder)).rejects.toThrow('not-a-backup');
  expect((await reopen(folder)).record(id).client.code).toBe('WT');
});

test('a cancelled backup leaves no file', async () => {
  const { caseload } = await lived();
  const stop = new AbortController();
  const made = caseload.withKey((identity) =>
    makeBackup({ folder: caseload.folder, identity, now: NOW, signal: stop.signal, onProgress: () => stop.abort() }),
  );
  await expect(made).rejects.toThrow('cancelled');
  expect(readdirSync(backupsFolder(caseload.folder))).toEqual([]);
  expect(readdirSync(caseload.folder).filter((name) => name.includes('part'))).toEqual([]);
});

test('a half file of a killed backup is never listed', async () => {
  const { caseload } = await lived();
  const place = backupsFolder(caseload.folder);
  mkdirSync(place);
  writeFileSync(path.join(place, 'caseload-20260304T091200Z-hour.tar.part'), 'half');
  writeFileSync(path.join(place, 'holiday.tar'), 'other');
  expect(backupNames(place)).toEqual([]);
  expect(backupNames(path.join(place, 'nowhere'))).toEqual([]);
});

test('a place that cannot take the backup is named, and nothing is left', async () => {
  const { caseload } = await lived();
  const file = path.join(newFolder(), 'a-file');
  writeFileSync(file, '');
  await expect(backUp(caseload, NOW, { to: path.join(file, 'below') })).rejects.toThrow('folder-not-writable');
});

test('a caseload that was damaged behind its own back gives no verified backup', async () => {
  const { caseload } = await lived();
  const { openFile } = await import('../../../db/connection.ts');
  caseload.withKey((identity) => {
    const db = openFile(caseloadFile(caseload.folder), identity);
    db.prepare("UPDATE blob SET sha256 = replace(sha256, substr(sha256, 1, 1), 'z')").run();
    db.close();
  });
  await expect(backUp(caseload)).rejects.toThrow('backup-unverified');
  expect(readdirSync(backupsFolder(caseload.folder))).toEqual([]);
});

/** Opens `identity.age` and `caseload.age` of a folder into `caseload.tar`, by the library that Fairhand uses itself. */
async function withOurLibrary(folder: string): Promise<void> {
  const { armor } = await import('age-encryption');
  const withPassphrase = new Decrypter();
  withPassphrase.addPassphrase(PASSPHRASE);
  const identity = armor.decode(readFileSync(path.join(folder, 'identity.age'), 'utf8'));
  const withIdentity = new Decrypter();
  withIdentity.addIdentity(await withPassphrase.decrypt(identity, 'text'));
  const caseload = readFileSync(path.join(folder, 'caseload.age'));
  writeFileSync(path.join(folder, 'caseload.tar'), await withIdentity.decrypt(caseload));
}

/**
 * The same by another implementation of the format: rage (in Rust, github.com/str4d/rage), compiled to WebAssembly in
 * the package @kanru/rage-wasm. It looks for a browser's Window, so it gets a process of its own with one.
 */
async function withRage(folder: string): Promise<void> {
  const script = `
    import { readFileSync, writeFileSync } from 'node:fs';
    globalThis.Window = class { static [Symbol.hasInstance]() { return true; } };
    const rage = await import(${JSON.stringify(path.resolve('node_modules/@kanru/rage-wasm/dist/index.js'))});
    const identity = await rage.decrypt_with_user_passphrase(process.env.WORD, readFileSync('identity.age'));
    const caseload = await rage.decrypt_with_x25519(new TextDecoder().decode(identity).trim(), readFileSync('caseload.age'));
    writeFileSync('caseload.tar', caseload);`;
  execFileSync(process.execPath, ['--no-warnings', '--input-type=module', '-e', script], {
    cwd: folder,
    env: { ...process.env, WORD: PASSPHRASE },
  });
}

test.each([
  ['the age library', withOurLibrary],
  ['rage, another implementation', withRage],
])('the way in READ-ME.txt works without Fairhand: tar, age and JSON lines, by %s', async (_name, openAge) => {
  const { caseload, id, picture } = await lived();
  const { name } = await backUp(caseload);
  const out = newFolder();
  execFileSync('tar', ['-xf', fileOf(caseload.folder, name), '-C', out]);
  expect(readFileSync(path.join(out, 'READ-ME.txt'), 'utf8')).toContain('age -d -i identity.age');
  const key = JSON.parse(readFileSync(path.join(out, 'key.json'), 'utf8')) as { passphrase: string };
  writeFileSync(path.join(out, 'identity.age'), key.passphrase);
  await openAge(out);
  execFileSync('tar', ['-xf', path.join(out, 'caseload.tar'), '-C', out]);
  const line = readFileSync(path.join(out, 'rows/client-0001.jsonl'), 'utf8').trim();
  expect(JSON.parse((JSON.parse(line) as { body: string }).body)).toMatchObject({ id, name: 'Wilhelmina Test' });
  const blob = readdirSync(path.join(out, 'blobs'))[0]!;
  expect(readFileSync(path.join(out, 'blobs', blob))).toEqual(picture);
});
