import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { describe, expect, test } from 'vitest';
import { findBrowser } from '../../../electron/browser/find.js';
import { launchOptions } from '../../../electron/browser/launch.ts';
import { PREFERENCES, switches } from '../../../electron/browser/switches.ts';
import { engineEnvironment, memoryFolder, profileFolder, wipeProfile } from '../../../electron/window-profile.ts';
import { freeName, plainFileName, saveInto } from '../../../electron/files/save-into.ts';
import { FIRST_SIZE, readSize } from '../../../electron/window-size.ts';

const options = { executable: '/usr/bin/chromium', dataFolder: '/p', size: FIRST_SIZE };
const folders = { profile: '/p/window-profile', temporary: '/dev/shm/fairhand-x' };

describe('the Chromium window', () => {
  test('reaches no network and opens no port', () => {
    const all = switches(FIRST_SIZE);
    expect(all).toContain('--host-resolver-rules=MAP * ~NOTFOUND');
    expect(all).toContain('--no-proxy-server');
    expect(all.some((word) => word.includes('remote-debugging-port'))).toBe(false);
  });

  test('weakens none of the page’s own limits', () => {
    const all = switches(FIRST_SIZE).join(' ');
    for (const weak of [
      'disable-web-security',
      'allow-running-insecure',
      'allow-file-access',
      'no-sandbox',
      'disable-site-isolation',
    ]) {
      expect(all).not.toContain(weak);
    }
  });

  test('uses the system sandbox for everybody but root', () => {
    expect(launchOptions(options, folders, 1000).chromiumSandbox).toBe(true);
    expect(launchOptions(options, folders, null).chromiumSandbox).toBe(true);
    expect(launchOptions(options, folders, 0).chromiumSandbox).toBe(false);
  });

  test('blocks service workers and downloads, which would keep client data in its profile', () => {
    expect(launchOptions(options, folders, 1000)).toMatchObject({
      serviceWorkers: 'block',
      acceptDownloads: false,
      viewport: null,
    });
  });

  test('is a private window: sessions, forms, history and caches stay in memory', () => {
    const all = switches(FIRST_SIZE);
    for (const word of ['--incognito', '--inprivate', '--disk-cache-size=1', '--disable-breakpad']) {
      expect(all).toContain(word);
    }
    expect(PREFERENCES.session.restore_on_startup).toBe(5);
    expect(PREFERENCES.autofill.enabled).toBe(false);
  });

  test('has its temporary files and shared memory in memory where the system has a place with room', () => {
    const tmpfs = { type: 0x01021994, bavail: 1_000_000, bsize: 4096 };
    const disk = { ...tmpfs, type: 0xef53 };
    const about = (places: Record<string, typeof tmpfs>) => (place: string) => places[place] ?? null;
    const env = { XDG_RUNTIME_DIR: '/run/user/1000' };
    const both = about({ '/run/user/1000': tmpfs, '/dev/shm': tmpfs });
    expect(memoryFolder('/data', env, both)).toMatch(/^\/run\/user\/1000\/fairhand-[0-9a-f]{16}$/);
    expect(memoryFolder('/other', env, both)).not.toBe(memoryFolder('/data', env, both));
    expect(memoryFolder('/data', {}, both)).toMatch(/^\/dev\/shm\//);
    expect(memoryFolder('/data', env, about({ '/run/user/1000': disk, '/dev/shm': disk }))).toBeNull();
    expect(memoryFolder('/data', env, about({ '/dev/shm': { ...tmpfs, bavail: 16_000 } }))).toBeNull();
    const { ignoreDefaultArgs, env: given } = launchOptions(options, folders, 1000, {});
    expect(ignoreDefaultArgs).toContain('--disable-dev-shm-usage');
    if (process.platform === 'linux') expect(given['TMPDIR']).toBe('/dev/shm/fairhand-x');
    expect(launchOptions(options, { ...folders, temporary: null }, 1000, {}).ignoreDefaultArgs).not.toContain(
      '--disable-dev-shm-usage',
    );
    expect(engineEnvironment(folders, 'linux')['XDG_DATA_HOME']).toBe('/p/window-profile/desktop-data');
    expect(engineEnvironment(folders, 'win32')).toEqual({});
  });

  test('leaves no profile behind', () => {
    const folder = mkdtempSync(path.join(tmpdir(), 'fairhand-profile-'));
    writeFileSync(profileFolder(folder), 'left by a killed window');
    wipeProfile(profileFolder(folder));
    expect(readdirSync(folder)).toEqual([]);
    rmSync(folder, { recursive: true });
  });

  test('is looked for only where FAIRHAND_BROWSER says, when it says so', () => {
    expect(findBrowser('linux', { FAIRHAND_BROWSER: '/nowhere/chromium' })).toBeNull();
    expect(findBrowser('linux', { FAIRHAND_BROWSER: process.execPath })).toBe(process.execPath);
  });
});

describe('saving without a dialog', () => {
  test('never overwrites', () => {
    const folder = mkdtempSync(path.join(tmpdir(), 'fairhand-save-'));
    const save = (text: string) =>
      saveInto(folder, {
        suggestedName: 'summary.pdf',
        bytes: new TextEncoder().encode(text),
        mime: 'application/pdf',
      });
    expect(save('one')).toEqual({ saved: true, name: 'summary.pdf' });
    expect(save('two')).toEqual({ saved: true, name: 'summary-2.pdf' });
    expect(readFileSync(path.join(folder, 'summary.pdf'), 'utf8')).toBe('one');
    rmSync(folder, { recursive: true });
  });

  test.each([
    ['../../etc/passwd', 'passwd'],
    ['a\\b\\c.pdf', 'c.pdf'],
    ['.hidden', 'hidden'],
    ['a:b?.pdf', 'a-b-.pdf'],
    ['', 'fairhand'],
    ['..', 'fairhand'],
  ])('%j becomes %j', (name, plain) => expect(plainFileName(name)).toBe(plain));

  test('counts up past taken names', () => {
    expect(freeName('a.pdf', (name) => ['a.pdf', 'a-2.pdf'].includes(name))).toBe('a-3.pdf');
  });
});

test.each(['', '{', 'null', '{"width":10,"height":10}', '{"width":"1280","height":800}', '{"width":1e9,"height":800}'])(
  'an unusable remembered size %j gives the first size',
  (text) => expect(readSize(text)).toEqual(FIRST_SIZE),
);
