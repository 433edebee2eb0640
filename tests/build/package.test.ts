/** The package: its configuration, and what a Linux folder made from it holds (with a stand-in for Electron). */
import { execFileSync, spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
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
import { writeNotices } from '../../build/notices.ts';

const root = fileURLToPath(new URL('../../', import.meta.url));
const config = createRequire(import.meta.url)('../../build/electron-builder.config.cjs') as Record<string, unknown>;

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
const FUSES = Buffer.concat([Buffer.from(`program ${FUSE_MARK}`), Buffer.from([1, 9]), Buffer.from('101010011')]);

describe.skipIf(process.platform !== 'linux')('the Linux folder', () => {
  let work: string;
  let made: string;
  let inside: string[];

  beforeAll(async () => {
    work = mkdtempSync(path.join(tmpdir(), 'fairhand-package-'));
    const electron = path.join(work, 'electron');
    mkdirSync(path.join(electron, 'resources'), { recursive: true });
    mkdirSync(path.join(electron, 'locales'));
    writeFileSync(path.join(electron, 'electron'), FUSES, { mode: 0o755 });
    writeFileSync(path.join(electron, 'version'), readElectronVersion());
    for (const name of ['LICENSE', 'LICENSES.chromium.html', 'locales/en-US.pak']) {
      writeFileSync(path.join(electron, name), '');
    }
    await compileDesktop(root);
    writeNotices();
    execFileSync(
      process.execPath,
      [
        path.join(root, 'node_modules/electron-builder/cli.js'),
        '--linux',
        '--dir',
        '--config',
        path.join(root, 'build/electron-builder.config.cjs'),
        `-c.electronDist=${electron}`,
        `-c.directories.output=${path.join(work, 'release')}`,
        '--publish',
        'never',
      ],
      { cwd: root, stdio: 'pipe' },
    );
    made = path.join(work, 'release', process.arch === 'arm64' ? 'linux-arm64-unpacked' : 'linux-unpacked');
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
});

test('without Electron’s program `npm run package` says so in a sentence', () => {
  const empty = mkdtempSync(path.join(tmpdir(), 'fairhand-no-electron-'));
  mkdirSync(path.join(root, '.cache'), { recursive: true });
  const run = spawnSync(process.execPath, ['--no-warnings', path.join(root, 'build/package.ts')], {
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
