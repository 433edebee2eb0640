import { expect, test } from 'vitest';
import { matches } from '../../renderer/window/frame/commands.ts';

const press = (key: string, held: Partial<Record<'ctrlKey' | 'metaKey' | 'altKey' | 'shiftKey', boolean>> = {}) => ({
  key,
  ctrlKey: false,
  metaKey: false,
  altKey: false,
  shiftKey: false,
  ...held,
});

test('keys are matched with what is held; redo has its second key', () => {
  expect(matches('Ctrl+Z', press('z', { ctrlKey: true }))).toBe(true);
  expect(matches('Ctrl+Z', press('Z', { ctrlKey: true, shiftKey: true }))).toBe(false);
  expect(matches('Ctrl+Shift+Z', press('Z', { ctrlKey: true, shiftKey: true }))).toBe(true);
  expect(matches('Ctrl+Shift+Z', press('y', { ctrlKey: true }))).toBe(true);
  expect(matches('Ctrl+Shift+Z', press('y'))).toBe(false);
  expect(matches('Alt+1', press('1', { altKey: true }))).toBe(true);
  expect(matches('r', press('R'))).toBe(true);
});
