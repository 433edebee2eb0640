/** Unlocking by the operating system's key store: the decisions, and the way through the contract on a fake store. */
import { existsSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { afterEach, expect, test } from 'vitest';
import type { RequestName } from '../../../electron/contract/index.ts';
import { systemKeyFile } from '../../../electron/files/system-key.ts';
import { dispatch } from '../../../electron/handlers/dispatch.ts';
import { Services } from '../../../electron/handlers/services.ts';
import { keyStoreState, type KeyStore, type KeyStoreState } from '../../../electron/key-store.ts';
import { newCaseload, newFolder, NOW, PASSPHRASE } from '../../db/support.ts';

test.each<[string, boolean, string | null, KeyStoreState]>([
  ['linux', true, 'basic_text', 'plain-text'],
  ['linux', false, 'basic_text', 'plain-text'],
  ['linux', true, 'unknown', 'none'],
  ['linux', true, null, 'none'],
  ['linux', true, 'a store of tomorrow', 'none'],
  ['linux', true, 'gnome_libsecret', 'usable'],
  ['linux', true, 'kwallet6', 'usable'],
  ['linux', false, 'gnome_libsecret', 'none'],
  ['darwin', true, null, 'usable'],
  ['win32', true, null, 'usable'],
  ['win32', false, null, 'none'],
  ['freebsd', true, null, 'none'],
])('on %s, available %s, store %s: %s', (platform, available, backend, expected) => {
  expect(keyStoreState({ platform, available, backend })).toBe(expected);
});

/** Seals by a byte mask that only this store knows. */
function fakeStore(mask = 0x5a): KeyStore & { is: KeyStoreState } {
  const turned = (bytes: Uint8Array) => bytes.map((byte) => byte ^ mask);
  return {
    is: 'usable',
    async state() {
      return this.is;
    },
    seal: async (secret) => turned(Buffer.from(secret)),
    open: async (sealed) => Buffer.from(turned(sealed)).toString('latin1'),
  };
}

const running: Services[] = [];
afterEach(() => {
  for (const services of running.splice(0)) services.lock('asked');
});

function servicesIn(folder: string, keyStore: KeyStore | null): Services {
  const services = new Services({
    folder,
    port: { keyStore } as never,
    shell: 'electron',
    version: '0',
    now: () => new Date(NOW),
    emit: () => {},
    demoSource: null,
  });
  running.push(services);
  return services;
}
const ask = async (services: Services, name: RequestName, input: unknown = {}) =>
  JSON.parse(await dispatch(services, JSON.stringify({ name, input }))) as {
    ok: boolean;
    code?: string;
    value?: { state?: string; systemKey?: boolean };
  };

async function locked(keyStore: KeyStore | null): Promise<Services> {
  const { folder, close } = await newCaseload();
  close();
  return servicesIn(folder, keyStore);
}

test('nothing is kept until she asks for it with her passphrase; then one request opens; taken back, it does not', async () => {
  const store = fakeStore();
  const services = await locked(store);
  const file = systemKeyFile(services.folder);
  expect((await ask(services, 'app.unlockWithSystem')).code).toBe('system-key-unusable');
  expect((await ask(services, 'app.keepSystemKey', { passphrase: PASSPHRASE })).code).toBe('locked');
  await ask(services, 'app.unlock', { passphrase: PASSPHRASE });
  expect(existsSync(file)).toBe(false);
  expect((await ask(services, 'app.systemKey')).value).toEqual({ state: 'off' });
  expect((await ask(services, 'app.keepSystemKey', { passphrase: 'somebody at an open window' })).code).toBe(
    'wrong-passphrase',
  );
  expect(existsSync(file)).toBe(false);
  expect((await ask(services, 'app.keepSystemKey', { passphrase: PASSPHRASE })).value?.systemKey).toBe(true);
  expect((await ask(services, 'app.systemKey')).value).toEqual({ state: 'on' });
  const identity = services.need().withKey((key) => Buffer.from(key));
  expect(readFileSync(file, 'latin1')).not.toContain(identity.toString('ascii'));
  expect(readFileSync(file, 'latin1')).not.toContain(PASSPHRASE);

  await ask(services, 'app.lock');
  expect((await ask(services, 'app.status')).value).toMatchObject({ state: 'locked', systemKey: true });
  expect((await ask(services, 'app.unlockWithSystem')).value?.state).toBe('open');
  await ask(services, 'app.forgetSystemKey');
  expect(existsSync(file)).toBe(false);
  await ask(services, 'app.lock');
  expect((await ask(services, 'app.unlockWithSystem')).code).toBe('system-key-unusable');
  expect((await ask(services, 'app.unlock', { passphrase: PASSPHRASE })).ok).toBe(true);
});

test('a plain-text store, a missing one and one that does not give back what it took are never used', async () => {
  const broken: KeyStore = { ...fakeStore(), open: async () => 'something else' };
  const asIs: KeyStore = { ...fakeStore(), seal: async (secret) => Buffer.from(secret) };
  for (const [store, state] of [
    [Object.assign(fakeStore(), { is: 'plain-text' as const }), 'plain-text'],
    [Object.assign(fakeStore(), { is: 'none' as const }), 'none'],
    [null, 'not-in-this-window'],
    [Object.assign(broken, { state: async () => 'usable' as const }), 'off'],
    [Object.assign(asIs, { state: async () => 'usable' as const }), 'off'],
  ] as const) {
    const services = await locked(store);
    await ask(services, 'app.unlock', { passphrase: PASSPHRASE });
    expect((await ask(services, 'app.systemKey')).value).toEqual({ state });
    expect((await ask(services, 'app.keepSystemKey', { passphrase: PASSPHRASE })).code).toBe('system-key-unusable');
    expect(existsSync(systemKeyFile(services.folder))).toBe(false);
  }
});

test('another account’s store, a spoiled file and another caseload’s key are refused without a word of damage', async () => {
  const services = await locked(fakeStore());
  const { folder } = services;
  await ask(services, 'app.unlock', { passphrase: PASSPHRASE });
  await ask(services, 'app.keepSystemKey', { passphrase: PASSPHRASE });
  await ask(services, 'app.lock');
  const good = readFileSync(systemKeyFile(folder), 'utf8');

  expect((await ask(servicesIn(folder, fakeStore(0x11)), 'app.unlockWithSystem')).code).toBe('system-key-unusable');
  for (const spoiled of ['', '{', good.replace('"version": 1', '"version": 2'), good.slice(0, 200)]) {
    writeFileSync(systemKeyFile(folder), spoiled);
    expect((await ask(services, 'app.unlockWithSystem')).code).toBe('system-key-unusable');
  }
  const other = await newCaseload(newFolder());
  other.close();
  writeFileSync(systemKeyFile(other.folder), good);
  expect((await ask(servicesIn(other.folder, fakeStore()), 'app.unlockWithSystem')).code).toBe('system-key-unusable');
  // Of no use to anybody any more.
  expect(existsSync(systemKeyFile(other.folder))).toBe(false);
});

test('a new file key takes the old one out of the key store’s hands', async () => {
  const services = await locked(fakeStore());
  await ask(services, 'app.unlock', { passphrase: PASSPHRASE });
  await ask(services, 'app.keepSystemKey', { passphrase: PASSPHRASE });
  const kept = readFileSync(systemKeyFile(services.folder));
  expect((await ask(services, 'app.rekey', { passphrase: PASSPHRASE, next: 'another long passphrase' })).ok).toBe(true);
  expect(existsSync(systemKeyFile(services.folder))).toBe(false);
  writeFileSync(systemKeyFile(services.folder), kept);
  expect((await ask(services, 'app.unlockWithSystem')).code).toBe('system-key-unusable');
  rmSync(systemKeyFile(services.folder), { force: true });
});
