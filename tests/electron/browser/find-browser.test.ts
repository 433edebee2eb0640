/** Places of installed browsers: decisions only, with each system's own paths (written for, not tried, on Windows and macOS). */
import { expect, test } from 'vitest';
import { browserPlaces } from '../../../electron/browser/find.js';

test('on Windows for everybody first, then the user\u2019s own', () => {
  const env = { PROGRAMFILES: 'C:\\Program Files', LOCALAPPDATA: 'C:\\Users\\ot\\AppData\\Local' };
  const places = browserPlaces('win32', env);
  expect(places).toContain('C:\\Program Files\\Microsoft\\Edge\\Application\\msedge.exe');
  expect(places).toContain('C:\\Users\\ot\\AppData\\Local\\BraveSoftware\\Brave-Browser\\Application\\brave.exe');
  expect(places.every((place) => !place.includes('/'))).toBe(true);
});

test('on macOS in both application folders', () => {
  const places = browserPlaces('darwin', { HOME: '/Users/ot' });
  expect(places).toContain('/Applications/Google Chrome.app/Contents/MacOS/Google Chrome');
  expect(places).toContain('/Users/ot/Applications/Brave Browser.app/Contents/MacOS/Brave Browser');
});

test('on Linux the program itself goes before Debian\u2019s script around it', () => {
  const places = browserPlaces('linux', {});
  expect(places.indexOf('/usr/lib/chromium/chromium')).toBeLessThan(places.indexOf('/usr/bin/chromium'));
  expect(new Set(places).size).toBe(places.length);
});
