import { expect, test } from 'vitest';
import { hasDisplay } from '../../build/launch/display.js';
import { addTallies, emptyTally, firstLine, lastLine, succeeded } from '../../build/reporters/tally.ts';

const passed = (count: number) => ({ ...emptyTally(), passed: count });

test('the last line counts what passed, failed and was skipped', () => {
  expect(lastLine(passed(12))).toBe('12 passed, 0 failed');
  const all = addTallies([
    passed(3),
    { ...passed(2), failed: ['lint'] },
    { ...emptyTally(), skipped: [{ name: 'Electron', reason: 'not there' }] },
  ]);
  expect(lastLine(all)).toBe('5 passed, 1 failed, 1 skipped');
});

test('a run without any test has not succeeded, nor has one with a failure', () => {
  expect(succeeded(passed(1))).toBe(true);
  expect(succeeded(emptyTally())).toBe(false);
  expect(succeeded({ ...passed(9), failed: ['one'] })).toBe(false);
});

test('a failure is named by its first line', () => {
  expect(firstLine('expected 1\n  at somewhere')).toBe('expected 1');
  expect(firstLine(undefined)).toBe('');
});

test('only Linux can be without a display', () => {
  expect(hasDisplay('linux', {})).toBe(false);
  expect(hasDisplay('linux', { DISPLAY: ':1' })).toBe(true);
  expect(hasDisplay('linux', { WAYLAND_DISPLAY: 'wayland-0' })).toBe(true);
  expect(hasDisplay('win32', {})).toBe(true);
  expect(hasDisplay('darwin', {})).toBe(true);
});
