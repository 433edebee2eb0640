/** The app as its user starts it: a process of its own, twice on one folder, killed, and without any network. */
import { execFileSync, spawn } from 'node:child_process';
import type { ChildProcess } from 'node:child_process';
import { existsSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, test } from '@playwright/test';
import { profileFolder } from '../../electron/window-profile.ts';
import { isTaken } from '../../electron/files/lock.ts';

const root = fileURLToPath(new URL('../../', import.meta.url));
const mainFile = path.join(root, 'electron/browser/main.ts');

test.skip(Boolean(process.env['FAIRHAND_TEST_SHELL']), 'this is about the browser shell');

let folder: string;
const running: Started[] = [];

test.beforeEach(() => {
  folder = mkdtempSync(path.join(tmpdir(), 'fairhand-start-'));
});
test.afterEach(async () => {
  const ending = running.splice(0);
  for (const { child } of ending) child.kill('SIGTERM');
  for (const { ended } of ending) await ended;
  expect(existsSync(profileFolder(folder))).toBe(false);
  rmSync(folder, { recursive: true, force: true, maxRetries: 5 });
});

interface Started {
  child: ChildProcess;
  said: () => string;
  ended: Promise<number | null>;
}

function start(program: string, args: string[]): Started {
  const child = spawn(program, args, { stdio: ['ignore', 'pipe', 'pipe'] });
  let said = '';
  child.stdout?.on('data', (part) => (said += part));
  child.stderr?.on('data', (part) => (said += part));
  const started: Started = {
    child,
    said: () => said,
    ended: new Promise((resolve) => child.on('close', (code) => resolve(code))),
  };
  running.push(started);
  return started;
}

const startApp = () => start(process.execPath, ['--no-warnings', mainFile, '--data', folder]);

test('a second start brings the first window forward and says so', async () => {
  startApp();
  await expect.poll(() => existsSync(folder) && isTaken(folder)).toBe(true);
  const second = startApp();
  expect(await second.ended).toBe(0);
  expect(second.said()).toBe('Fairhand is open already on this caseload; its window was brought to the front.\n');
});

test('a stopped start closes its window, its browser and its folder', async () => {
  const first = startApp();
  await expect.poll(() => existsSync(profileFolder(folder))).toBe(true);
  await expect.poll(() => readdirSync(profileFolder(folder)).length).toBeGreaterThan(3);
  first.child.kill('SIGTERM');
  expect(await first.ended).toBe(0);
  expect(existsSync(profileFolder(folder))).toBe(false);
  expect(isTaken(folder)).toBe(false);
});

test('what a killed start left is wiped by the next one', async () => {
  const first = startApp();
  await expect.poll(() => existsSync(profileFolder(folder))).toBe(true);
  first.child.kill('SIGKILL');
  await first.ended;
  writeFileSync(path.join(folder, 'left-over'), '');
  const second = startApp();
  await expect.poll(() => isTaken(folder)).toBe(true);
  second.child.kill('SIGTERM');
  expect(await second.ended).toBe(0);
  expect(existsSync(profileFolder(folder))).toBe(false);
});

test('a folder that cannot be used is a sentence', async () => {
  writeFileSync(path.join(folder, 'file'), '');
  const started = start(process.execPath, ['--no-warnings', mainFile, '--data', path.join(folder, 'file')]);
  expect(await started.ended).toBe(2);
  expect(started.said()).toMatch(/^Fairhand cannot write into the caseload folder .+\.\n$/);
});

test('an unknown option is a sentence', async () => {
  const started = start(process.execPath, ['--no-warnings', mainFile, '--nonsense']);
  expect(await started.ended).toBe(2);
  expect(started.said()).toMatch(/^The only option is --data FOLDER.+\.\n$/);
  const visit = start(process.execPath, ['--no-warnings', path.join(root, 'electron/browser/demo-run.ts'), '--help']);
  expect(await visit.ended).toBe(2);
  expect(visit.said()).toMatch(/^The only option of the demo visit is --out FOLDER.+\.\n$/);
});

/** A network namespace of its own without any interface needs root (or user namespaces). */
function canCutTheNetwork(): boolean {
  try {
    execFileSync('unshare', ['-n', 'true'], { stdio: 'ignore' });
    return true;
  } catch {
    return false;
  }
}

test('the whole demo visit runs without any network interface and leaves its pages and pictures', async () => {
  test.skip(!canCutTheNetwork(), 'cutting the network needs Linux and root');
  test.setTimeout(420_000);
  const out = path.join(folder, 'out');
  const visit = start('unshare', [
    '-n',
    process.execPath,
    '--no-warnings',
    path.join(root, 'electron/browser/demo-run.ts'),
    '--out',
    out,
  ]);
  const code = await visit.ended;
  expect(visit.said()).toMatch(/The demo visit left \d+ files/);
  expect(visit.said()).not.toMatch(/did not work/);
  expect(code).toBe(0);
  const files = readdirSync(out);
  for (const screen of [
    'start',
    'caseload',
    'visit-and-record',
    'screen',
    'sample',
    'read-back',
    'program',
    'progress',
    'pages',
  ]) {
    expect(files).toContain(`screen-${screen}.png`);
  }
  expect(files.filter((name) => name.endsWith('.pdf')).length).toBeGreaterThanOrEqual(3);
});
