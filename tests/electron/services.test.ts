/** What stands behind the contract over time: idle locking, guessing, checks at start and weekly, backups asked for. */
import { copyFileSync, cpSync, existsSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { openFile } from '../../db/connection.ts';
import { caseloadFile, companions } from '../../db/files.ts';
import type { RequestName, ShellEvent } from '../../electron/contract/index.ts';
import { backupsFolder } from '../../electron/files/backup/backup-list.ts';
import { dispatch } from '../../electron/handlers/dispatch.ts';
import { Services } from '../../electron/handlers/services.ts';
import { IDLE_MS, lockWhenIdle } from '../../electron/open-backend.ts';
import { client, doing, newCaseload, newFolder, NOW, PASSPHRASE, visit } from '../db/support.ts';

let now = new Date(NOW);
let events: ShellEvent[] = [];
const running: Services[] = [];
beforeEach(() => {
  now = new Date(NOW);
  events = [];
});
afterEach(() => {
  vi.useRealTimers();
  for (const services of running.splice(0)) services.lock('asked');
});

function servicesIn(folder: string): Services {
  const services = new Services({
    folder,
    port: { keyStore: null } as never,
    shell: 'browser',
    version: '0',
    now: () => now,
    emit: (event) => events.push(event),
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
const unlock = (services: Services) => ask(services, 'app.unlock', { passphrase: PASSPHRASE });
const missing = async (services: Services) =>
  ((await unlock(services)).value as unknown as { missing?: string } | undefined)?.missing;

async function kept(): Promise<{ folder: string; id: string }> {
  const caseload = await newCaseload();
  const { id } = caseload.put('client', client({ name: 'Kept Here' }), doing);
  caseload.close();
  return { folder: caseload.folder, id };
}

test('ten minutes without keys, pen or pointer lock: connection closed, bytes forgotten, everything answers `locked`', async () => {
  const { folder, id } = await kept();
  const services = servicesIn(folder);
  await unlock(services);
  const caseload = services.need();
  services.stageBlob(new Uint8Array(9));
  vi.useFakeTimers();
  const stop = lockWhenIdle(services, vi.fn());
  const pass = (ms: number) => {
    now = new Date(now.getTime() + ms);
    vi.advanceTimersByTime(15_000);
  };
  pass(IDLE_MS - 1000);
  expect(services.caseload).not.toBeNull();
  // Somebody types: the window says so. What the window asks for by itself does not count.
  await ask(services, 'app.used');
  pass(IDLE_MS - 1000);
  await ask(services, 'client.open', { clientId: id });
  expect(services.caseload).not.toBeNull();
  pass(1000);
  stop();
  expect(services.caseload).toBeNull();
  expect(events.at(-1)).toEqual({ kind: 'locked', why: 'idle' });
  expect(() => caseload.clients()).toThrow('locked');
  expect(() => caseload.withKey(() => 0)).toThrow('locked');
  expect((await ask(services, 'client.open', { clientId: id })).code).toBe('locked');
  expect(() => services.takeStaged('any')).toThrow('not-found');
  expect(JSON.stringify(await ask(services, 'app.status'))).not.toContain('Kept Here');
});

test('wrong passphrases asked for all at once are tried one by one and slowed down all the same', async () => {
  const { folder } = await kept();
  const services = servicesIn(folder);
  const codes = await Promise.all(
    Array.from({ length: 20 }, async () => (await ask(services, 'app.unlock', { passphrase: 'a guess, wrong' })).code),
  );
  expect(codes.filter((code) => code === 'wrong-passphrase')).toHaveLength(3);
  expect(codes.filter((code) => code === 'wait-before-retry')).toHaveLength(17);
  now = new Date(now.getTime() + 61_000);
  expect((await unlock(services)).ok).toBe(true);
});

test('a restart does not shorten the wait, nor give the free tries back; the right passphrase does', async () => {
  const { folder } = await kept();
  const guess = async (services: Services) =>
    (await ask(services, 'app.unlock', { passphrase: 'a guess, wrong' })).code;
  for (const code of ['wrong-passphrase', 'wrong-passphrase', 'wrong-passphrase', 'wait-before-retry'])
    expect(await guess(servicesIn(folder))).toBe(code);
  expect((await unlock(servicesIn(folder))).code).toBe('wait-before-retry');
  now = new Date(now.getTime() + 1100);
  expect(await guess(servicesIn(folder))).toBe('wrong-passphrase');
  // Longer each time.
  now = new Date(now.getTime() + 1100);
  expect(await guess(servicesIn(folder))).toBe('wait-before-retry');
  // A clock that was set back a year makes it no longer than a minute.
  now = new Date(now.getTime() - 365 * 86_400_000);
  expect(await guess(servicesIn(folder))).toBe('wait-before-retry');
  now = new Date(now.getTime() + 61_000);
  const services = servicesIn(folder);
  expect((await unlock(services)).ok).toBe(true);
  services.lock('asked');
  expect(await guess(servicesIn(folder))).toBe('wrong-passphrase');
});

test('the trail is checked whenever the caseload opens, everything weekly; damage is told', async () => {
  const { folder } = await kept();
  const services = servicesIn(folder);
  await unlock(services);
  const identity = services.need().withKey((key) => Buffer.from(key));
  await services.weeklyCheck();
  expect(services.need().setting('lastCheck')).toBe(NOW);
  expect(services.damageFound).toBe(false);
  await ask(services, 'app.lock');

  const db = openFile(caseloadFile(folder), identity);
  db.exec("DROP TRIGGER IF EXISTS trail_no_update; UPDATE client SET body = json_set(body, '$.name', 'Somebody Else')");
  db.close();
  events = [];
  await unlock(services);
  await vi.waitFor(() => expect(events).toContainEqual({ kind: 'damage' }), 60_000);
  expect((await ask(services, 'app.status')).value).toMatchObject({ damageFound: true });
  // The clock decides about the weekly one.
  events = [];
  await services.weeklyCheck();
  expect(events).toEqual([]);
  now = new Date(now.getTime() + 7 * 24 * 3_600_000);
  await services.weeklyCheck();
  expect(events).toEqual([{ kind: 'damage' }]);
  expect(services.need().setting('lastCheck')).toBe(NOW);
});

test('a lost write-ahead log is told; a kill and a clean end are not taken for one', async () => {
  const caseload = await newCaseload();
  const killed = newFolder();
  const { id } = caseload.put('client', client(), doing);
  caseload.put('visit', visit(id), doing);
  // As a kill leaves it: the log has what the file has not.
  cpSync(caseload.folder, killed, { recursive: true });
  const robbed = newFolder();
  cpSync(killed, robbed, { recursive: true });
  rmSync(`${caseloadFile(robbed)}-wal`);
  expect(existsSync(`${caseloadFile(robbed)}-shm`)).toBe(true);
  expect(await missing(servicesIn(killed))).toBe('nothing');
  expect(await missing(servicesIn(robbed))).toBe('log');
  caseload.close();
  expect(await missing(servicesIn(caseload.folder))).toBe('nothing');
});

test('a file older than its newest backup is told, unless it was restored', async () => {
  const { folder } = await kept();
  const old = newFolder();
  copyFileSync(caseloadFile(folder), path.join(old, 'caseload.db'));
  const services = servicesIn(folder);
  await unlock(services);
  services.need().put('client', client(), doing);
  await ask(services, 'backup.now');
  expect(services.missing).toBe('nothing');
  await ask(services, 'app.lock');
  for (const file of companions(caseloadFile(folder))) rmSync(file, { force: true });
  copyFileSync(path.join(old, 'caseload.db'), caseloadFile(folder));
  expect(await missing(services)).toBe('rolled-back');
  // The backups tell by themselves where there is no sealed note.
  await ask(services, 'app.lock');
  rmSync(path.join(folder, 'caseload.seal'));
  expect(await missing(services)).toBe('newer-backup');
  const [backup] = readdirSync(backupsFolder(folder));
  now = new Date(now.getTime() + 60_000);
  expect((await ask(services, 'backup.restore', { name: backup, passphrase: PASSPHRASE })).ok).toBe(true);
  expect(await missing(services)).toBe('nothing');
});

test('a backup that was asked for tells how far it is, can be stopped, and leaves nothing half', async () => {
  const { folder, id } = await kept();
  const services = servicesIn(folder);
  await unlock(services);
  for (let n = 0; n < 4; n++) services.need().putBlob(id, 'image/png', Buffer.alloc(4_000_000, n + 1), doing);
  const asked = ask(services, 'backup.now');
  await vi.waitFor(() => expect(events.some((event) => event.kind === 'progress')).toBe(true), 60_000);
  await ask(services, 'backup.cancel');
  expect((await asked).code).toBe('cancelled');
  expect(readdirSync(backupsFolder(folder))).toEqual([]);
  expect(readdirSync(folder).filter((name) => name.endsWith('.part'))).toEqual([]);
  events = [];
  expect((await ask(services, 'backup.now')).ok).toBe(true);
  const steps = events.flatMap((event) => (event.kind === 'progress' && event.id === 'backup' ? [event.done] : []));
  expect(steps.length).toBeGreaterThan(5);
  expect(steps).toEqual(steps.toSorted((a, b) => a - b));
  expect(steps.every((done) => done >= 0 && done <= 1)).toBe(true);
});

test('the second place is old only after a week without a copy, not whenever the stick is in the drawer', async () => {
  const { folder } = await kept();
  const stick = newFolder();
  const services = servicesIn(folder);
  await unlock(services);
  await ask(services, 'backup.setSecond', { folder: stick });
  expect(services.secondOld()).toBe(true);
  await ask(services, 'backup.now');
  expect(services.secondOld()).toBe(false);
  rmSync(stick, { recursive: true });
  expect(services.secondOld()).toBe(false);
  expect((await ask(services, 'backup.state')).value).toMatchObject({ secondThere: false, secondNewest: NOW });
  now = new Date(now.getTime() + 9 * 24 * 3_600_000);
  expect((await ask(services, 'app.status')).value).toMatchObject({ secondOld: true });
});

test('a damaged newest backup does not hide those before it', async () => {
  const { folder } = await kept();
  const services = servicesIn(folder);
  await unlock(services);
  await ask(services, 'backup.now');
  now = new Date(now.getTime() + 60_000);
  services.need().put('client', client(), doing);
  await ask(services, 'backup.now');
  await ask(services, 'app.lock');
  const [older, newer] = readdirSync(backupsFolder(folder)).toSorted();
  writeFileSync(path.join(backupsFolder(folder), newer!), 'text over the file');
  const listed = await ask(services, 'backup.listWith', { passphrase: PASSPHRASE });
  expect(listed.value).toMatchObject([
    { name: newer, verified: false },
    { name: older, verified: true, clients: 1 },
  ]);
  expect((await ask(services, 'backup.listWith', { passphrase: 'another passphrase' })).code).toBe('wrong-passphrase');
});
