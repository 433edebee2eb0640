/** The package: its configuration, and what a Linux folder made from it holds (with a stand-in for Electron). */
import { execFileSync, spawnSync } from 'node:child_process';
import {
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { extractAll, listPackage } from '@electron/asar';
import { FuseV1Options, getCurrentFuseWire } from '@electron/fuses';
import { DebugLogger } from 'builder-util';
import { validateConfiguration } from 'app-builder-lib/out/util/config/config.js';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { compileDesktop } from '../../build/launch/desktop.js';
import { writeNotices } from '../../build/package/notices.ts';
import { missingToSign } from '../../build/package/signing.ts';
import { inThrowAwaySystem, whyNoThrowAwaySystem } from './throw-away-system.ts';

const root = fileURLToPath(new URL('../../', import.meta.url));
const config = createRequire(import.meta.url)('../../build/package/electron-builder.config.cjs') as Record<
  string,
  unknown
>;

test('the configuration fits electron-builder’s own schema', async () => {
  await validateConfiguration(structuredClone(config), new DebugLogger(false));
  await expect(validateConfiguration({ ...config, nonsense: 1 } as object, new DebugLogger(false))).rejects.toThrow();
});

test('there is a target for Windows, macOS and Linux', () => {
  expect(config).toMatchObject({
    win: { target: ['nsis', 'portable'] },
    mac: { target: ['dmg'], hardenedRuntime: true },
    linux: { target: ['AppImage', 'deb'] },
  });
});

test('client files and backups open with Fairhand on each system, by endings and kinds of their own', () => {
  const associations = config['fileAssociations'] as { ext: string; mimeType: string; role: string; name: string }[];
  expect(associations.map(({ ext, mimeType }) => [ext, mimeType])).toEqual([
    ['fhclient', 'application/x-fairhand-client'],
    ['fhbackup', 'application/x-fairhand-backup'],
  ]);
  // Set for all three: an entry under a system alone would take their place there.
  for (const system of ['linux', 'mac', 'win']) expect(config[system]).not.toHaveProperty('fileAssociations');
});

test('Windows keeps the caseload at an uninstall and macOS asks for the camera in words', () => {
  expect(config).toMatchObject({
    nsis: { deleteAppDataOnUninstall: false, perMachine: false },
    mac: { extendInfo: { NSCameraUsageDescription: expect.stringMatching(/picture/) } },
  });
});

test('what is missing to sign and notarize is one sentence, by system', () => {
  expect(missingToSign({}, 'linux')).toBeNull();
  expect(missingToSign({}, 'win32')).toMatch(/^The package is not signed.+WIN_CSC_LINK.+\.$/);
  expect(missingToSign({ WIN_CSC_LINK: 'a.p12' }, 'win32')).toBeNull();
  expect(missingToSign({ WIN_CSC_LINK: 'a.p12' }, 'darwin')).toMatch(/not signed/);
  expect(missingToSign({ CSC_LINK: 'a.p12' }, 'darwin')).toMatch(/^The package is signed and not notarized.+\.$/);
  expect(missingToSign({ CSC_LINK: 'a.p12', APPLE_ID: 'a' }, 'darwin')).toMatch(/not notarized/);
  const account = { APPLE_ID: 'a', APPLE_APP_SPECIFIC_PASSWORD: 'b', APPLE_TEAM_ID: 'c' };
  expect(missingToSign({ CSC_LINK: 'a.p12', ...account }, 'darwin')).toBeNull();
});

test('the fuses are set as Electron’s security checklist asks', () => {
  expect(config['electronFuses']).toEqual({
    runAsNode: false,
    enableCookieEncryption: true,
    enableNodeOptionsEnvironmentVariable: false,
    enableNodeCliInspectArguments: false,
    enableEmbeddedAsarIntegrityValidation: true,
    onlyLoadAppFromAsar: true,
    loadBrowserProcessSpecificV8Snapshot: false,
    grantFileProtocolExtraPrivileges: false,
  });
});

/** The mark that Electron's program carries before its switches, and one byte each for their state ('0' is off). */
const FUSE_MARK = 'dL7pKGdnNz796PbbjQWNKmHXBZaB9tsX';
const FUSES = Buffer.concat([Buffer.from(FUSE_MARK), Buffer.from([1, 9]), Buffer.from('101010011')]);
/** Says what it was started with, as whoever opens a file by a double click starts it. */
const STAND_IN = Buffer.concat([Buffer.from('#!/bin/sh\necho "started with $*"\nexit 0\n'), FUSES]);

describe.skipIf(process.platform !== 'linux')('the Linux package', () => {
  let work: string;
  let made: string;
  let inside: string[];
  let deb: string;

  beforeAll(async () => {
    work = mkdtempSync(path.join(tmpdir(), 'fairhand-package-'));
    const electron = path.join(work, 'electron');
    mkdirSync(path.join(electron, 'resources'), { recursive: true });
    mkdirSync(path.join(electron, 'locales'));
    writeFileSync(path.join(electron, 'electron'), STAND_IN, { mode: 0o755 });
    writeFileSync(path.join(electron, 'version'), readElectronVersion());
    for (const name of ['LICENSE', 'LICENSES.chromium.html', 'chrome-sandbox', 'locales/en-US.pak']) {
      writeFileSync(path.join(electron, name), '');
    }
    await compileDesktop(root);
    writeNotices();
    execFileSync(
      process.execPath,
      [
        path.join(root, 'node_modules/electron-builder/cli.js'),
        '--linux',
        'deb',
        '--config',
        path.join(root, 'build/package/electron-builder.config.cjs'),
        `-c.electronDist=${electron}`,
        `-c.directories.output=${path.join(work, 'release')}`,
        // Packing is what takes the time; how tight does not matter here.
        '-c.deb.compression=gz',
        '--publish',
        'never',
      ],
      { cwd: root, stdio: 'pipe', env: { ...process.env, CUSTOM_FPM_PATH: path.join(root, 'build/package/fpm.js') } },
    );
    made = path.join(work, 'release', process.arch === 'arm64' ? 'linux-arm64-unpacked' : 'linux-unpacked');
    const [debName] = readdirSync(path.join(work, 'release')).filter((name) => name.endsWith('.deb'));
    deb = path.join(work, 'release', debName!);
    inside = listPackage(path.join(made, 'resources', 'app.asar'), { isPack: false }).map((name) => name.slice(1));
  }, 180_000);

  afterAll(() => rmSync(work, { recursive: true, force: true }));

  test('starts at the desktop shell', () => {
    extractAll(path.join(made, 'resources', 'app.asar'), path.join(work, 'app'));
    const { main } = JSON.parse(readFileSync(path.join(work, 'app', 'package.json'), 'utf8')) as { main: string };
    expect(inside).toContain(main);
    expect(inside).toContain('dist/app/electron/desktop/preload.cjs');
  });

  test('holds no tests and no sources', () => {
    const ours = inside.filter((name) => !name.startsWith('node_modules/'));
    expect(ours.filter((name) => /^(tests|build|electron|db|renderer|\.ci|out|release)(\/|$)/.test(name))).toEqual([]);
    expect(inside.filter((name) => /\.(ts|mts|cts|svelte|map|c|cc|cpp|h|gyp)$/.test(name))).toEqual([]);
    expect(inside.filter((name) => /(^|\/)(tests?|__tests__)\//.test(name))).toEqual([]);
  });

  test('holds no other platform’s native parts and no other shell', () => {
    const native = [...inside, ...filesUnder(path.join(made, 'resources', 'app.asar.unpacked'))].filter((name) =>
      /\.(node|so[.\d]*|dll|dylib|exe)$/.test(name),
    );
    expect(native.some((name) => name.includes('better-sqlite3'))).toBe(true);
    expect(native.filter((name) => /darwin|win32|musl/.test(name))).toEqual([]);
    expect(native.filter((name) => !name.includes(process.arch))).toEqual([]);
    expect(
      inside.filter((name) => /node_modules\/(playwright|node-linux|node-win|vite|svelte|electron\/)/.test(name)),
    ).toEqual([]);
  });

  test('has everything that the app loads: its services start from the package alone', () => {
    extractAll(path.join(made, 'resources', 'app.asar'), path.join(work, 'app'));
    const services = path.join(work, 'app/dist/app/electron/handlers/services.js');
    const run = spawnSync(
      process.execPath,
      ['--input-type=module', '-e', `await import(${JSON.stringify(services)});`],
      {
        cwd: work,
        encoding: 'utf8',
      },
    );
    expect(run.stderr).toBe('');
    expect(run.status).toBe(0);
  });

  test('has the fuses flipped in its program', async () => {
    const program = path.join(made, 'fairhand');
    expect(existsSync(program)).toBe(true);
    const wire = await getCurrentFuseWire(program);
    const state = (fuse: FuseV1Options) => String.fromCharCode(Number(wire[fuse]));
    expect(state(FuseV1Options.RunAsNode)).toBe('0');
    expect(state(FuseV1Options.EnableNodeOptionsEnvironmentVariable)).toBe('0');
    expect(state(FuseV1Options.EnableNodeCliInspectArguments)).toBe('0');
    expect(state(FuseV1Options.OnlyLoadAppFromAsar)).toBe('1');
    expect(state(FuseV1Options.EnableEmbeddedAsarIntegrityValidation)).toBe('1');
    expect(state(FuseV1Options.GrantFileProtocolExtraPrivileges)).toBe('0');
  });

  const debSays = (...args: string[]) => execFileSync('dpkg-deb', args, { encoding: 'utf8' });

  test('the deb names itself as Debian asks (Debian Policy, chapter 5), and everything in it belongs to root', () => {
    const field = (name: string) => debSays('--field', deb, name).trim();
    expect(field('Package')).toBe('fairhand');
    expect(field('Version')).toBe(
      (JSON.parse(readFileSync(path.join(root, 'package.json'), 'utf8')) as { version: string }).version,
    );
    expect(field('Architecture')).toBe(process.arch === 'arm64' ? 'arm64' : 'amd64');
    expect(field('Maintainer')).toMatch(/^[^<>]+ <[^@ ]+@[^ ]+>$/);
    expect(field('Depends')).toContain('libnss3');
    expect(field('Description').split('\n')[0]).toMatch(/^Caseload of an occupational therapist/);
    const lines = debSays('--contents', deb).trim().split('\n');
    expect(lines.filter((line) => !/^\S+ root\/root /.test(line))).toEqual([]);
    expect(lines.filter((line) => /^.{8}w/.test(line) && !line.startsWith('l'))).toEqual([]);
    // The package's own size in kB, and a limit that a second copy of anything large would pass.
    const kilobytes = Number(field('Installed-Size'));
    expect(kilobytes).toBeGreaterThan(20_000);
    expect(kilobytes).toBeLessThan(120_000);
    expect(statSync(deb).size).toBeLessThan(60_000_000);
  });

  test('the deb is installed, opens what is double-clicked, and is removed leaving nothing but the caseload', ({
    skip,
  }) => {
    const why = whyNoThrowAwaySystem();
    if (why) skip(why);
    const { said, changed } = inThrowAwaySystem(work, deb, [
      'dpkg -i --force-depends --force-unsafe-io /fairhand.deb',
      'echo "installed as $(dpkg-query -W -f "\\${Status}" fairhand)"',
      'dpkg --verify fairhand && echo "every file as it was packed"',
      'cat /usr/share/applications/fairhand.desktop',
      'if command -v desktop-file-validate; then desktop-file-validate /usr/share/applications/fairhand.desktop && echo "entry valid"; fi',
      'cat /usr/share/mime/packages/fairhand.xml',
      'if command -v update-mime-database; then grep fhbackup /usr/share/mime/globs; fi',
      'head -c 8 /usr/share/icons/hicolor/512x512/apps/fairhand.png | od -An -tx1',
      'wc -c < /usr/share/doc/fairhand/copyright',
      'cmp /usr/share/doc/fairhand/copyright /opt/Fairhand/resources/THIRD-PARTY-NOTICES.txt && echo "licences beside the program"',
      'fairhand /home/a/week.fhbackup',
      'mkdir -p /root/.local/share/fairhand && echo kept > /root/.local/share/fairhand/caseload.db',
      'dpkg --purge fairhand',
      'dpkg-query -W fairhand || echo "not known any more"',
    ]);
    expect(said).toContain('installed as install ok installed');
    expect(said).toContain('every file as it was packed');
    const entry = Object.fromEntries(
      [...said.matchAll(/^([A-Z][A-Za-z]+)=(.*)$/gm)].map(([, key, value]) => [key, value]),
    );
    expect(entry).toMatchObject({
      Type: 'Application',
      Name: 'Fairhand',
      Exec: '/opt/Fairhand/fairhand %U',
      Icon: 'fairhand',
      MimeType: 'application/x-fairhand-client;application/x-fairhand-backup;',
      StartupWMClass: 'fairhand',
    });
    if (said.includes('desktop-file-validate')) expect(said).toContain('entry valid');
    expect(said).toContain('<glob pattern="*.fhclient"/>');
    expect(said).toContain('<mime-type type="application/x-fairhand-backup">');
    if (existsSync('/usr/bin/update-mime-database')) expect(said).toContain('application/x-fairhand-backup:*.fhbackup');
    // The eight bytes that every PNG begins with (ISO/IEC 15948).
    expect(said).toContain('89 50 4e 47 0d 0a 1a 0a');
    expect(said).toContain('licences beside the program');
    expect(said).toContain('started with /home/a/week.fhbackup');
    expect(said).toContain('not known any more');
    // The system's own books of packages, types and caches are left out: they are written by every package.
    const books =
      /^(var\/(lib|cache|log)|usr\/share\/(mime|icons\/hicolor\/icon-theme.cache|applications\/mimeinfo.cache)|etc\/alternatives$|tmp|dev|proc|fairhand\.deb)/;
    expect(changed.filter((file) => !books.test(file))).toEqual(['root/.local/share/fairhand/caseload.db']);
    expect(
      changed.filter((file) => /fairhand/i.test(file) && !/^(var\/(lib\/dpkg|log)|fairhand\.deb)/.test(file)),
    ).toEqual(['root/.local/share/fairhand/caseload.db']);
  });
});

test('without Electron’s program `npm run package` says so in a sentence', () => {
  const empty = mkdtempSync(path.join(tmpdir(), 'fairhand-no-electron-'));
  mkdirSync(path.join(root, '.cache'), { recursive: true });
  const run = spawnSync(process.execPath, ['--no-warnings', path.join(root, 'build/package/package.ts')], {
    encoding: 'utf8',
    env: { ...process.env, ELECTRON_OVERRIDE_DIST_PATH: empty, FAIRHAND_NO_DOWNLOAD: '1' },
  });
  rmSync(empty, { recursive: true });
  expect(run.status).toBe(2);
  expect(run.stderr).toMatch(/Electron’s program is not on this machine/);
});

function readElectronVersion(): string {
  return (
    JSON.parse(readFileSync(path.join(root, 'node_modules/electron/package.json'), 'utf8')) as { version: string }
  ).version;
}

function filesUnder(folder: string): string[] {
  return existsSync(folder) ? (readdirSync(folder, { recursive: true }) as string[]) : [];
}
