/**
 * Finds Electron's own program without ever asking the electron package for it (that starts a download), and brings
 * it where it is missing.
 */
import { existsSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import path from 'node:path';
import { during, say } from './console.js';
import { archiveAddress, archiveName, download, NotDownloaded } from './electron-download.js';
import { root } from './install.js';

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

/**
 * Brings Electron's program where it is missing. A try that fails is told in a sentence and never given up for good: what
 * came stays, and the next start goes on from there. FAIRHAND_NO_DOWNLOAD=1: never tries.
 */
export async function tryElectronDownload() {
  if (electronProgram() || process.env.FAIRHAND_NO_DOWNLOAD === '1') return;
  const folder = packageFolder();
  const { version } = JSON.parse(readFileSync(path.join(folder, 'package.json'), 'utf8'));
  const name = archiveName(version, process.platform, process.arch);
  const digest = JSON.parse(readFileSync(path.join(folder, 'checksums.json'), 'utf8'))[name];
  if (!digest) return say('There is no Electron program for this system; an installed browser opens the window.');
  const file = path.join(root, '.cache', 'electron', name);
  try {
    say('Looking for Electron’s program (about 120 MB; a cut line is taken up again at the next start)');
    if (!existsSync(file)) await download(archiveAddress(version, process.platform, process.arch), file, digest);
    const { extract } = createRequire(path.join(folder, 'package.json'))('@electron-internal/extract-zip');
    await during('Unpacking it', () => extract(file, { dir: path.join(folder, 'dist') }));
    writeFileSync(path.join(folder, 'path.txt'), programIn[process.platform] ?? 'electron');
    rmSync(file, { force: true });
  } catch (error) {
    const why = error instanceof NotDownloaded ? error.message : 'it could not be unpacked';
    say(
      `Electron’s program is not here yet: ${why}. An installed browser opens the window instead; the next start tries again.`,
    );
  }
}
