/** A caseload that was set back, rewritten, exchanged or opened with another program says so when it opens. */
import { cpSync, existsSync, mkdirSync, readdirSync, rmSync } from 'node:fs';
import path from 'node:path';
import { afterEach, expect, test } from 'vitest';
import { openFile } from '../../db/connection.ts';
import { caseloadFile, companions, keyFile, keyFileCopy } from '../../db/files.ts';
import { fingerprintOf, readFingerprint } from '../../db/fingerprint.ts';
import type { RequestName } from '../../electron/contract/index.ts';
import { backupsFolder } from '../../electron/files/backup/backup-list.ts';
import { stateFolder } from '../../electron/files/trail-seal.ts';
import { dispatch } from '../../electron/handlers/dispatch.ts';
import { Services } from '../../electron/handlers/services.ts';
import { rewriteTrail } from '../db/rewrite-trail.ts';
import { client, doing, newCaseload, newFolder, NOW, PASSPHRASE } from '../db/support.ts';

const running: Services[] = [];
afterEach(() => {
  for (const services of running.splice(0)) services.lock('asked');
});

interface Place {
  folder: string;
  state: string;
}

/** A new start of Fairhand on a folder. */
function start({ folder, state }: Place): Services {
  for (const services of running.splice(0)) services.lock('asked');
  const services = new Services({
    folder,
    state,
    port: { keyStore: null } as never,
    shell: 'browser',
    version: '0',
    now: () => new Date(NOW),
    emit: () => undefined,
    demoSource: null,
  });
  running.push(services);
  return services;
}
const ask = async (services: Services, name: RequestName, input: unknown = {}) =>
  JSON.parse(await dispatch(services, JSON.stringify({ name, input }))) as {
    ok: boolean;
    code?: string;
    value?: never;
  };
const open = async (place: Place, passphrase = PASSPHRASE) => {
  const services = start(place);
  const answer = await ask(services, 'app.unlock', { passphrase });
  return { services, missing: (answer.value as unknown as { missing: string } | undefined)?.missing ?? answer.code };
};
const missing = async (place: Place, passphrase = PASSPHRASE) => (await open(place, passphrase)).missing;

/** A caseload with one client, opened and closed once; no backups. */
async function sealed(): Promise<Place & { id: string }> {
  const caseload = await newCaseload();
  const { id } = caseload.put('client', client({ name: 'Sealed Invented' }), doing);
  caseload.close();
  const place = { folder: caseload.folder, state: path.join(newFolder(), 'state') };
  expect(await missing(place)).toBe('nothing');
  start(place);
  return { ...place, id };
}

function keepCopy({ folder }: Place): string {
  const copy = newFolder();
  for (const name of readdirSync(folder))
    if (name.startsWith('caseload.')) cpSync(path.join(folder, name), path.join(copy, name));
  return copy;
}
function putCopyBack({ folder }: Place, copy: string): void {
  for (const name of readdirSync(folder)) if (name.startsWith('caseload.')) rmSync(path.join(folder, name));
  cpSync(copy, folder, { recursive: true });
  rmSync(backupsFolder(folder), { recursive: true, force: true });
}
async function work(place: Place & { id: string }): Promise<void> {
  const { services } = await open(place);
  services.need().put('client', client({ id: place.id, note: 'written later' }), doing);
  start(place);
}

test('a caseload that is opened, changed and closed as usual has nothing to tell', async () => {
  const place = await sealed();
  for (let times = 0; times < 3; times++) await work(place);
  expect(await missing(place)).toBe('nothing');
});

test('set back to an earlier state, with its own sealed note and all backups deleted: the note outside tells', async () => {
  const place = await sealed();
  const copy = keepCopy(place);
  await work(place);
  putCopyBack(place, copy);
  expect(await missing(place)).toBe('rolled-back');
  // It goes on being told until somebody says why; that is noted, and sealed.
  const { services, missing: again } = await open(place);
  expect(again).toBe('rolled-back');
  expect((await ask(services, 'app.acknowledge')).value).toMatchObject({ missing: 'nothing' });
  expect(services.need().setting('acknowledged')).toMatchObject({ what: 'rolled-back' });
  expect(await missing(place)).toBe('nothing');
});

test('only the caseload file set back: the note beside it tells, on a computer that never saw it', async () => {
  const place = await sealed();
  const copy = keepCopy(place);
  await work(place);
  for (const file of companions(caseloadFile(place.folder))) rmSync(file, { force: true });
  cpSync(caseloadFile(copy), caseloadFile(place.folder));
  expect(await missing({ ...place, state: newFolder() })).toBe('rolled-back');
});

test('an entry changed and all hashes computed anew, triggers put back: the note tells', async () => {
  const place = await sealed();
  const { services } = await open(place);
  const identity = services.need().withKey((key) => Buffer.from(key));
  const printed = services.need().fingerprint();
  start(place);
  rewriteTrail(place.folder, identity);
  const { services: after, missing: found } = await open(place);
  expect(found).toBe('rewritten');
  expect((await ask(after, 'trail.checkFingerprint', { typed: printed })).value).toMatchObject({ fits: 'no' });
});

test('another caseload with its own key in its place is told', async () => {
  const place = await sealed();
  const other = await sealed();
  rmSync(path.join(other.folder, 'caseload.seal'));
  for (const file of [caseloadFile, keyFile, keyFileCopy]) cpSync(file(other.folder), file(place.folder));
  expect(await missing(place)).toBe('other-caseload');
});

test('a sealed note taken away is missed: by the other one, and by a caseload that was created with them', async () => {
  const first = await sealed();
  rmSync(path.join(first.folder, 'caseload.seal'));
  expect(await missing(first)).toBe('seal-missing');
  const place = await sealed();
  const { services } = await open(place);
  services.need().putSetting('sealed', true, doing);
  start(place);
  rmSync(path.join(place.folder, 'caseload.seal'));
  rmSync(place.state, { recursive: true });
  expect(await missing(place)).toBe('seal-missing');
});

test('a trigger removed, a foreign one, a foreign table: told, and Fairhand’s own pass', async () => {
  for (const sql of [
    'DROP TRIGGER trail_never_changes',
    'CREATE TRIGGER spy AFTER INSERT ON visit BEGIN DELETE FROM setting; END',
    'CREATE TABLE stash (a TEXT)',
  ]) {
    const place = await sealed();
    const { services } = await open(place);
    const identity = services.need().withKey((key) => Buffer.from(key));
    start(place);
    const db = openFile(caseloadFile(place.folder), identity);
    db.exec(sql);
    db.close();
    expect(await missing(place), sql).toBe('foreign-tables');
  }
});

test('a changed passphrase, a restore and its undo by hand are no surprise, also at a new start', async () => {
  const place = await sealed();
  const { services } = await open(place);
  const made = await ask(services, 'backup.now');
  const NEXT = 'nine lighthouses and a spoon';
  expect((await ask(services, 'app.rekey', { passphrase: PASSPHRASE, next: NEXT })).ok).toBe(true);
  expect(await missing(place, NEXT)).toBe('nothing');
  const { name } = made.value as unknown as { name: string };
  const restored = await ask((await open(place, NEXT)).services, 'backup.restore', { name, passphrase: PASSPHRASE });
  const { keptAs } = restored.value as unknown as { keptAs: string };
  // The backup brought its old key along.
  expect(await missing(place, NEXT)).toBe('wrong-passphrase');
  const { services: again, missing: found } = await open(place);
  expect(found).toBe('nothing');
  expect((await ask(again, 'backup.undoRestore', { keptAs })).ok).toBe(true);
  const status = await ask(again, 'app.unlock', { passphrase: NEXT });
  expect(status.value).toMatchObject({ missing: 'nothing' });
}, 240_000);

test('a fingerprint is short, typed with slips of the eye it still fits, and a changed letter does not', async () => {
  const place = await sealed();
  const { services } = await open(place);
  const { fingerprint } = (await ask(services, 'trail.fingerprint')).value as unknown as { fingerprint: string };
  expect(fingerprint).toMatch(/^\d+(-[0-9A-HJKMNP-TV-Z]{4}){3}$/);
  services.need().put('client', client({ id: place.id, note: 'more' }), doing);
  const check = async (typed: string) => (await ask(services, 'trail.checkFingerprint', { typed })).value;
  const slips = fingerprint
    .toLowerCase()
    .replaceAll('-', ' ')
    .replaceAll('0', 'o')
    .replace(/^o/, '0')
    .replaceAll('1', 'l')
    .replace(/^l/, '1');
  for (const typed of [fingerprint, slips]) expect(await check(typed)).toMatchObject({ fits: 'yes' });
  const last = fingerprint.at(-1) === 'Z' ? 'Y' : 'Z';
  expect(await check(fingerprint.slice(0, -1) + last)).toMatchObject({ fits: 'no' });
  expect(await check(`99${fingerprint}`)).toMatchObject({ fits: 'beyond' });
  for (const typed of ['', 'hello', fingerprint.slice(0, -2)])
    expect(await check(typed)).toMatchObject({ fits: 'unreadable' });
});

test('a fingerprint holds 60 bits of the hash and reads back', () => {
  const hash = 'ffffffffffffffff'.padEnd(64, '0');
  expect(fingerprintOf(7, hash)).toBe('7-ZZZZ-ZZZZ-ZZZZ');
  expect(fingerprintOf(7, `0000000000000010${'0'.repeat(48)}`)).toBe('7-0000-0000-0001');
  expect(readFingerprint('7-ZZZZ-ZZZZ-ZZZZ')).toEqual({ entries: 7, code: 'ZZZZZZZZZZZZ' });
});

test('the outer note lies where the system keeps such things and names neither client nor folder', async () => {
  const home = { home: '/home/x', env: {} };
  expect(stateFolder({ platform: 'linux', ...home })).toBe('/home/x/.local/state/fairhand');
  expect(stateFolder({ platform: 'linux', home: '/home/x', env: { XDG_STATE_HOME: '/s' } })).toBe('/s/fairhand');
  expect(stateFolder({ platform: 'darwin', ...home })).toContain('/home/x/Library');
  const place = await sealed();
  expect(readdirSync(place.state).join()).toMatch(/^[0-9a-f]{32}\.seal$/);
  // A folder that cannot be made keeps nobody from working.
  const blocked = path.join(newFolder(), 'file');
  mkdirSync(blocked, { mode: 0o500 });
  expect(existsSync(blocked)).toBe(true);
  expect(await missing({ ...place, state: '/proc/none' })).toBe('nothing');
});
