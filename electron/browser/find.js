/**
 * Finds an installed browser of the Chromium family. Plain JavaScript, because build/start.js asks before anything
 * is installed, on whatever Node the machine has.
 */
import { accessSync, constants } from 'node:fs';
import path from 'node:path';

/** Programs of the family on Windows and macOS, in the order they are asked. */
const WINDOWS = [
  'Chromium/Application/chrome.exe',
  'Google/Chrome/Application/chrome.exe',
  'Microsoft/Edge/Application/msedge.exe',
  'BraveSoftware/Brave-Browser/Application/brave.exe',
];
const MACOS = ['Chromium', 'Google Chrome', 'Microsoft Edge', 'Brave Browser'];
/** Debian's /usr/bin/chromium is a shell script around the first one: started directly, it passes the pipe on unharmed. */
const LINUX = [
  '/usr/lib/chromium/chromium',
  '/usr/bin/chromium',
  '/usr/bin/chromium-browser',
  '/usr/bin/google-chrome-stable',
  '/usr/bin/google-chrome',
  '/usr/bin/microsoft-edge',
  '/usr/bin/brave-browser',
  '/opt/google/chrome/chrome',
  '/opt/microsoft/msedge/msedge',
  '/opt/brave.com/brave/brave',
];

/** Where to look, system places before the user's own. Written with the system's own separators. */
export function browserPlaces(platform, env) {
  if (platform === 'win32') {
    const roots = [env.PROGRAMFILES, env['PROGRAMFILES(X86)'], env.LOCALAPPDATA].filter(Boolean);
    return WINDOWS.flatMap((tail) => roots.map((root) => path.win32.join(root, tail)));
  }
  if (platform === 'darwin') {
    const roots = ['/Applications', ...(env.HOME ? [`${env.HOME}/Applications`] : [])];
    return MACOS.flatMap((name) => roots.map((root) => `${root}/${name}.app/Contents/MacOS/${name}`));
  }
  const own = env.HOME ? [`${env.HOME}/.local/bin/chromium`, `${env.HOME}/.local/bin/google-chrome`] : [];
  return [...LINUX, ...own];
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
  return browserPlaces(platform, env).find(runs) ?? null;
}
