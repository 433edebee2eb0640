import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { describe, expect, test } from 'vitest';
import { findBrowser } from '../../electron/browser/find.js';
import { launchOptions, profileFolder, switches, wipeProfile } from '../../electron/browser/launch.ts';
import { freeName, plainFileName, saveInto } from '../../electron/files/save-into.ts';
import { FIRST_SIZE, readSize } from '../../electron/window-size.ts';

const options = { executable: '/usr/bin/chromium', profile: '/p', size: FIRST_SIZE };

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
    expect(launchOptions(options, 1000).chromiumSandbox).toBe(true);
    expect(launchOptions(options, null).chromiumSandbox).toBe(true);
    expect(launchOptions(options, 0).chromiumSandbox).toBe(false);
  });

  test('blocks service workers and downloads, which would keep client data in its profile', () => {
    expect(launchOptions(options, 1000)).toMatchObject({
      serviceWorkers: 'block',
      acceptDownloads: false,
      viewport: null,
    });
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
