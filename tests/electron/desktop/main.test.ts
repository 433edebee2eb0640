/** The start of the Electron shell as a whole, on the fake: what is set up, in which folder, and how it ends. */
import { existsSync, mkdtempSync, mkdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { askForward, takeLock } from '../../../electron/files/lock.ts';
import * as fake from './fake-electron.ts';

vi.mock('electron', () => import('./fake-electron.ts'));
const { main } = await import('../../../electron/desktop/main.ts');
const { CALL } = await import('../../../electron/desktop/ipc-channels.ts');

let work: string;
let data: string;
beforeEach(() => {
  work = mkdtempSync(path.join(tmpdir(), 'fairhand-main-'));
  data = path.join(work, 'caseload');
  mkdirSync(path.join(work, 'app'));
  writeFileSync(path.join(work, 'app', 'package.json'), '{"version":"1.2.3"}');
  fake.app.appPath = path.join(work, 'app');
  fake.app.calls.length = 0;
  fake.BrowserWindow.made.length = 0;
});
const environment = { ...process.env };
afterEach(() => {
  for (const name of ['TMPDIR', 'XDG_DATA_HOME']) {
    if (environment[name] === undefined) delete process.env[name];
    else process.env[name] = environment[name];
  }
});
afterEach(() => rmSync(work, { recursive: true, force: true }));

async function quit(): Promise<void> {
  fake.app.fire('will-quit', { preventDefault: () => undefined });
  await vi.waitFor(() => expect(fake.app.calls).toContain('exit'));
}

test('sets everything up, shows the page, and answers its first request', async () => {
  await main(['electron', '--data', data]);
  expect(fake.app.calls).toEqual(['enableSandbox', 'ready']);
  expect(fake.app.paths.get('userData')).toBe(path.join(data, 'window-profile'));
  const window = fake.BrowserWindow.made[0]!;
  expect(window.loaded).toBe('fairhand://app/index.html');
  expect(fake.theSession.schemes.has('fairhand')).toBe(true);
  expect(fake.theSession.request).not.toBeNull();
  expect(fake.theSession.check).not.toBeNull();
  expect(fake.theSession.before).not.toBeNull();
  const event = { sender: window.webContents, senderFrame: { url: 'fairhand://app/index.html', parent: null } };
  const answer = await fake.ipcMain.handlers.get(CALL)!(event, '{"name":"app.status","input":{}}');
  expect(JSON.parse(String(answer))).toMatchObject({
    ok: true,
    value: { state: 'first-start', shell: 'electron', version: '1.2.3', folder: data },
  });
  await quit();
});

test('keeps nothing on disk: a session in memory, no caches, no downloads, no spelling service, temporary files in memory', async () => {
  mkdirSync(path.join(data, 'window-profile'), { recursive: true });
  writeFileSync(path.join(data, 'window-profile', 'left by a killed window'), 'x');
  await main(['electron', '--data', data]);
  expect(existsSync(path.join(data, 'window-profile', 'left by a killed window'))).toBe(false);
  expect(fake.session.asked).not.toBe('');
  expect(fake.session.asked.startsWith('persist:')).toBe(false);
  expect(fake.session.options).toEqual({ cache: false });
  expect(fake.theSession.spellChecker).toBe(false);
  let refused = false;
  fake.theSession.fire('will-download', { preventDefault: () => (refused = true) });
  expect(refused).toBe(true);
  expect(fake.app.switches.get('disk-cache-size')).toBe('1');
  expect(fake.app.switches.has('disable-breakpad')).toBe(true);
  if (process.platform === 'linux') expect(process.env['XDG_DATA_HOME']).toContain('window-profile');
  await quit();
  expect(existsSync(path.join(data, 'window-profile'))).toBe(false);
});

async function handed(): Promise<unknown> {
  const window = fake.BrowserWindow.made[0]!;
  const event = { sender: window.webContents, senderFrame: { url: 'fairhand://app/index.html', parent: null } };
  const answer = await fake.ipcMain.handlers.get(CALL)!(event, '{"name":"app.handed","input":{}}');
  return (JSON.parse(String(answer)) as { value: { file: unknown } }).value.file;
}

test('offers a file that was double-clicked: as an argument, by the event of macOS, and from a second start', async () => {
  await main(['electron', '--data', data, 'file:///home/a/J-12.fhclient']);
  expect(await handed()).toEqual({ name: 'J-12.fhclient', kind: 'client' });
  let kept = true;
  fake.app.fire('open-file', { preventDefault: () => (kept = false) }, '/home/a/week.fhbackup');
  expect(kept).toBe(false);
  expect(await handed()).toEqual({ name: 'week.fhbackup', kind: 'backup' });
  askForward(data, '/home/a/T-1.fhclient');
  await vi.waitFor(async () => expect(await handed()).toEqual({ name: 'T-1.fhclient', kind: 'client' }));
  expect(fake.BrowserWindow.made[0]!.calls).toContain('focus');
  await quit();
});

test('a page that breaks down is locked and shown anew, three times', async () => {
  await main(['electron', '--data', data]);
  const window = fake.BrowserWindow.made[0]!;
  const crash = () => window.webContents.fire('render-process-gone', {}, { reason: 'crashed' });
  for (let n = 0; n < 3; n++) crash();
  expect(window.webContents.reloads).toBe(3);
  expect(window.calls).not.toContain('close');
  crash();
  expect(window.webContents.reloads).toBe(3);
  expect(window.calls).toContain('close');
  await quit();
});

test('asks before it closes with something unsaved, and stays unless told otherwise', async () => {
  await main(['electron', '--data', data]);
  const window = fake.BrowserWindow.made[0]!;
  const closes = (answer: number) => {
    let closed = false;
    fake.dialog.answer = answer;
    window.webContents.fire('will-prevent-unload', { preventDefault: () => (closed = true) });
    return closed;
  };
  expect([closes(0), closes(1)]).toEqual([false, true]);
  await quit();
});

test('a second start on the same folder ends and opens no window', async () => {
  const held = takeLock(data);
  await main(['electron', '--data', data]);
  expect(fake.app.calls).toContain('quit');
  expect(fake.BrowserWindow.made).toEqual([]);
  held?.release();
});

test('the folder is free again after the end', async () => {
  await main(['electron', '--data', data]);
  expect(takeLock(data)).toBeNull();
  await quit();
  const lock = takeLock(data);
  expect(lock).not.toBeNull();
  lock?.release();
});

test('a folder that cannot be written is said in a sentence', async () => {
  writeFileSync(data, 'a file lies where the folder should be');
  await main(['electron', '--data', data]);
  expect(fake.dialog.boxes.at(-1)?.[1]).toMatch(/cannot write into the caseload folder/);
  expect(fake.BrowserWindow.made).toEqual([]);
});
