import { spawn } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { askForward, isTaken, takeLock } from '../../electron/files/lock.ts';

let folder: string;
beforeEach(() => {
  folder = mkdtempSync(path.join(tmpdir(), 'fairhand-lock-'));
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

test('the first start holds the folder until it gives it free', () => {
  const lock = takeLock(folder);
  expect(lock).not.toBeNull();
  expect(isTaken(folder)).toBe(true);
  expect(takeLock(folder)).toBeNull();
  lock?.release();
  lock?.release();
  expect(isTaken(folder)).toBe(false);
  takeLock(folder)?.release();
});

test('a second start calls the first one forward', async () => {
  const lock = takeLock(folder);
  const forward = vi.fn();
  lock?.onForward(forward);
  askForward(folder);
  await vi.waitFor(() => expect(forward).toHaveBeenCalledTimes(1));
  expect(forward).toHaveBeenLastCalledWith(null);
  askForward(folder, '/a/week.fhbackup');
  await vi.waitFor(() => expect(forward).toHaveBeenLastCalledWith('/a/week.fhbackup'));
  lock?.release();
});

test('a killed Fairhand leaves the folder free', async () => {
  const module = fileURLToPath(new URL('../../electron/files/lock.ts', import.meta.url));
  const script = `import { takeLock } from ${JSON.stringify(module)}; takeLock(${JSON.stringify(folder)}); console.log('held'); setInterval(() => {}, 1000);`;
  const child = spawn(process.execPath, ['--no-warnings', '--input-type=module', '-e', script]);
  await new Promise((resolve) => child.stdout.once('data', resolve));
  expect(isTaken(folder)).toBe(true);
  child.kill('SIGKILL');
  await new Promise((resolve) => child.once('exit', resolve));
  expect(isTaken(folder)).toBe(false);
});

test('the folder is made where it is missing', () => {
  const deep = path.join(folder, 'a', 'b');
  takeLock(deep)?.release();
  expect(isTaken(deep)).toBe(false);
});
