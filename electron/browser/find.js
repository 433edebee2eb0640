/**
 * Finds an installed browser of the Chromium family. Plain JavaScript, because build/start.js asks before anything
 * is installed, on whatever Node the machine has.
 */
import { accessSync, constants } from 'node:fs';
import path from 'node:path';

function places(platform, env) {
  if (platform === 'win32') {
    const roots = [env.PROGRAMFILES, env['PROGRAMFILES(X86)'], env.LOCALAPPDATA].filter(Boolean);
    const tails = [
      'Chromium/Application/chrome.exe',
      'Google/Chrome/Application/chrome.exe',
      'Microsoft/Edge/Application/msedge.exe',
    ];
    return tails.flatMap((tail) => roots.map((root) => path.join(root, tail)));
  }
  if (platform === 'darwin') {
    return ['Chromium', 'Google Chrome', 'Microsoft Edge'].map(
      (name) => `/Applications/${name}.app/Contents/MacOS/${name}`,
    );
  }
  // Debian's /usr/bin/chromium is a shell script around the first one: started directly, it passes the pipe on unharmed.
  return [
    '/usr/lib/chromium/chromium',
    '/usr/bin/chromium',
    '/usr/bin/chromium-browser',
    '/usr/bin/google-chrome-stable',
    '/usr/bin/google-chrome',
    '/usr/bin/microsoft-edge',
  ];
}

function runs(file) {
  try {
    accessSync(file, constants.X_OK);
    return true;
  } catch {
    return false;
  }
}

/**
 * The program to open the window with, or null when none is installed.
 * FAIRHAND_BROWSER names one explicitly (and must then exist).
 */
export function findBrowser(platform = process.platform, env = process.env) {
  const named = env.FAIRHAND_BROWSER;
  if (named) return runs(named) ? named : null;
  return places(platform, env).find(runs) ?? null;
}
