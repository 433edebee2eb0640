import path from 'node:path';
import { expect, test } from 'vitest';
import { dataFolder, FolderProblem } from '../../electron/data-folder.ts';

const linux = { platform: 'linux', home: '/home/therapist', env: {} };

test('each system has its own place for the caseload', () => {
  expect(dataFolder(null, linux)).toBe('/home/therapist/.local/share/fairhand');
  expect(dataFolder(null, { ...linux, env: { XDG_DATA_HOME: '/data' } })).toBe('/data/fairhand');
  expect(dataFolder(null, { ...linux, env: { XDG_DATA_HOME: 'relative' } })).toBe(
    '/home/therapist/.local/share/fairhand',
  );
  expect(dataFolder(null, { ...linux, platform: 'darwin' })).toBe(
    '/home/therapist/Library/Application Support/Fairhand',
  );
  expect(dataFolder(null, { ...linux, platform: 'win32', env: { APPDATA: '/roaming' } })).toBe('/roaming/Fairhand');
});

test('a chosen folder wins, first the one of this start', () => {
  const machine = { ...linux, env: { FAIRHAND_DATA: '/clinic' } };
  expect(dataFolder(null, machine)).toBe('/clinic');
  expect(dataFolder('mine', machine)).toBe(path.resolve('mine'));
});

test('an empty choice is refused in a sentence', () => {
  expect(() => dataFolder(' ', linux)).toThrow(FolderProblem);
});
