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
});

test('on Windows the caseload lies in local data, never in a roaming profile', () => {
  const windows = {
    platform: 'win32',
    home: 'C:\\Users\\ot',
    env: { APPDATA: 'C:\\Users\\ot\\AppData\\Roaming', LOCALAPPDATA: 'D:\\Local' },
  };
  expect(dataFolder(null, windows)).toBe('D:\\Local\\Fairhand');
  expect(dataFolder(null, { ...windows, env: {} })).toBe('C:\\Users\\ot\\AppData\\Local\\Fairhand');
  // What an earlier version put into the roaming profile is opened there until the therapist moves it.
  const roaming = 'C:\\Users\\ot\\AppData\\Roaming\\Fairhand';
  const kept = (file: string) => file === `${roaming}\\caseload.db`;
  expect(dataFolder(null, { ...windows, exists: kept })).toBe(roaming);
  const both = (file: string) => kept(file) || file === 'D:\\Local\\Fairhand\\caseload.db';
  expect(dataFolder(null, { ...windows, exists: both })).toBe('D:\\Local\\Fairhand');
});

test('a chosen folder wins, first the one of this start', () => {
  const machine = { ...linux, env: { FAIRHAND_DATA: '/clinic' } };
  expect(dataFolder(null, machine)).toBe('/clinic');
  expect(dataFolder('mine', machine)).toBe(path.resolve('mine'));
});

test('an empty choice is refused in a sentence', () => {
  expect(() => dataFolder(' ', linux)).toThrow(FolderProblem);
});
