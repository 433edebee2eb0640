/** Finds or makes a display for the window. */
import { spawn } from 'node:child_process';
import { existsSync } from 'node:fs';
import { installSystemPackages } from './install.js';

/** True when a window can be seen by somebody. Windows and macOS always have a display for us. */
export function hasDisplay(platform = process.platform, env = process.env) {
  return platform !== 'linux' || Boolean(env.DISPLAY || env.WAYLAND_DISPLAY);
}

/**
 * Starts a hidden X display that only a file in /tmp leads to (no TCP).
 * @returns {Promise<{env: NodeJS.ProcessEnv, stop: () => void} | null>} null when there is no Xvfb
 */
export async function hiddenDisplay() {
  if (!existsSync('/usr/bin/Xvfb')) await installSystemPackages(['xvfb'], 'a hidden display');
  if (!existsSync('/usr/bin/Xvfb')) return null;
  const args = ['-displayfd', '3', '-screen', '0', '1400x1000x24', '-nolisten', 'tcp', '-noreset'];
  const server = spawn('/usr/bin/Xvfb', args, { stdio: ['ignore', 'ignore', 'ignore', 'pipe'] });
  const number = await new Promise((resolve) => {
    server.stdio[3].once('data', (text) => resolve(String(text).trim()));
    server.once('exit', () => resolve(null));
    server.once('error', () => resolve(null));
  });
  if (number === null) return null;
  return { env: { ...process.env, DISPLAY: `:${number}` }, stop: () => server.kill() };
}
