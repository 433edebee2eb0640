/**
 * Finds Electron's own program without ever asking the electron package for it (that starts a download), and tries
 * to download it once.
 */
import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import path from 'node:path';
import { during, say } from './console.js';
import { lockMark, root } from './install.js';
import { quietly } from './run.js';

/** Longest wait for the one download, in milliseconds. */
const PATIENCE = 20_000;

const programIn = {
  win32: 'electron.exe',
  darwin: 'Electron.app/Contents/MacOS/Electron',
};

function packageFolder() {
  return path.dirname(createRequire(path.join(root, 'package.json')).resolve('electron/package.json'));
}

/** The folder that holds Electron's program and a `version` file that matches the pinned package, or null. */
export function electronDist() {
  let folder;
  try {
    folder = packageFolder();
  } catch {
    return null;
  }
  const dist = process.env.ELECTRON_OVERRIDE_DIST_PATH || path.join(folder, 'dist');
  const version = JSON.parse(readFileSync(path.join(folder, 'package.json'), 'utf8')).version;
  try {
    if (readFileSync(path.join(dist, 'version'), 'utf8').trim().replace(/^v/, '') !== version) return null;
  } catch {
    return null;
  }
  return existsSync(path.join(dist, programIn[process.platform] ?? 'electron')) ? dist : null;
}

/** Electron's program, or null when it is not on this machine. */
export function electronProgram() {
  const dist = electronDist();
  return dist && path.join(dist, programIn[process.platform] ?? 'electron');
}

const FAILED = path.join(root, '.cache', 'electron-download-failed');

/** Tries the download once; a failure is remembered until the lock changes. FAIRHAND_NO_DOWNLOAD=1: never tries. */
export async function tryElectronDownload() {
  if (electronProgram() || process.env.FAIRHAND_NO_DOWNLOAD === '1') return;
  if (existsSync(FAILED) && readFileSync(FAILED, 'utf8') === lockMark()) return;
  const script = path.join(packageFolder(), 'install.js');
  await during('Looking for Electron’s program (once, 20 s at most)', () =>
    quietly(process.execPath, [script], { timeout: PATIENCE }),
  );
  if (electronProgram()) return;
  say('Electron’s program cannot be downloaded here.');
  mkdirSync(path.dirname(FAILED), { recursive: true });
  writeFileSync(FAILED, lockMark());
}
