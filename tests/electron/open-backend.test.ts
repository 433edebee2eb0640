import { mkdtempSync, mkdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { appVersion, demoSource, IDLE_MS, lockWhenIdle } from '../../electron/open-backend.ts';

beforeEach(() => void vi.useFakeTimers());
afterEach(() => void vi.useRealTimers());

const caseload = {} as never;
const warn = vi.fn();

test('an unattended caseload locks after ten minutes, not before', () => {
  const lock = vi.fn();
  const services = { caseload, idleMs: 0, lock };
  const stop = lockWhenIdle(services, warn);
  services.idleMs = IDLE_MS - 1;
  vi.advanceTimersByTime(60_000);
  expect(lock).not.toHaveBeenCalled();
  services.idleMs = IDLE_MS;
  vi.advanceTimersByTime(15_000);
  expect(lock).toHaveBeenCalledWith('idle');
  stop();
});

test('the lock is announced once at least a minute ahead, and anew after somebody was at work', () => {
  const lock = vi.fn();
  const said = vi.fn();
  const services = { caseload, idleMs: 0, lock };
  const stop = lockWhenIdle(services, said);
  const pass = (seconds: number) => {
    for (let n = 0; n < seconds; n += 15) {
      services.idleMs += 15_000;
      vi.advanceTimersByTime(15_000);
    }
  };
  pass(510);
  expect(said).not.toHaveBeenCalled();
  pass(75);
  expect(said.mock.calls).toEqual([[75]]);
  services.idleMs = 0;
  vi.advanceTimersByTime(15_000);
  expect(lock).not.toHaveBeenCalled();
  pass(585);
  expect(said).toHaveBeenCalledTimes(2);
  pass(15);
  expect(lock).toHaveBeenCalledWith('idle');
  stop();
});

test('a locked caseload is left alone, and looking stops with the window', () => {
  const lock = vi.fn();
  const services = { caseload: null, idleMs: IDLE_MS * 2, lock };
  const stop = lockWhenIdle(services, warn);
  vi.advanceTimersByTime(60_000);
  stop();
  lockWhenIdle({ caseload, idleMs: IDLE_MS, lock }, warn)();
  vi.advanceTimersByTime(60_000);
  expect(lock).not.toHaveBeenCalled();
});

test('the demo is offered only where it was built, the version is the package’s', () => {
  const root = mkdtempSync(path.join(tmpdir(), 'fairhand-root-'));
  expect(demoSource(root)).toBeNull();
  mkdirSync(path.join(root, 'dist', 'demo'), { recursive: true });
  writeFileSync(path.join(root, 'dist', 'demo', 'caseload.db'), '');
  expect(demoSource(root)).toBe(path.join(root, 'dist', 'demo'));
  rmSync(root, { recursive: true });
  expect(appVersion(fileURLToPath(new URL('../../', import.meta.url)))).toMatch(/^\d+\.\d+\.\d+$/);
});
