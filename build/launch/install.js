/** Installs what is missing: packages from the lock, and on Debian as root the system's own window and print parts. */
import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { during, say } from './console.js';
import { npm, quietly } from './run.js';

export const root = fileURLToPath(new URL('../../', import.meta.url));

const at = (...parts) => path.join(root, ...parts);

const sha256 = (file) => createHash('sha256').update(readFileSync(file)).digest('hex');

/** Identifies the installed set: the lock, and the platform whose binaries were installed. */
export function lockMark() {
  return `${sha256(at('package-lock.json'))} ${process.platform}-${process.arch}`;
}

const MARK = at('node_modules', '.fairhand-installed');

export function packagesAreCurrent() {
  return existsSync(MARK) && readFileSync(MARK, 'utf8') === lockMark();
}

/** Installs the exact packages of the lock. Nothing of ours needs an install script, so none is run. */
export async function installPackages() {
  if (packagesAreCurrent()) return;
  const first = !existsSync(at('node_modules'));
  const line = first
    ? 'Installing packages (first start; about a minute)'
    : 'Installing packages (the list has changed)';
  const [program, args] = npm(['ci', '--ignore-scripts', '--no-audit', '--no-fund', '--loglevel=error']);
  const { code, output } = await during(line, () => quietly(program, args, { cwd: root }));
  if (code !== 0) {
    throw new Error(
      `The packages could not be installed. Check the connection to the package registry, then start again. npm said:\n${output.trim().split('\n').slice(-6).join('\n')}`,
    );
  }
  writeFileSync(MARK, lockMark());
}

/** True on Debian (or what is built on it) as root: only there does Fairhand install system packages. */
export function canInstallSystemPackages() {
  return process.platform === 'linux' && process.getuid?.() === 0 && existsSync('/usr/bin/apt-get');
}

const NOT_THERE = at('.cache', 'system-packages-failed.json');

function failedBefore() {
  try {
    const failed = JSON.parse(readFileSync(NOT_THERE, 'utf8'));
    return Date.now() - failed.at < 3600_000 ? failed.names : [];
  } catch {
    return [];
  }
}

/** Asks the system's package list which of these are installed. */
export async function missingSystemPackages(names) {
  const { output } = await quietly('dpkg-query', ['-W', '-f', '${Package} ${db:Status-Abbrev}\n', ...names]);
  const there = new Set(
    output
      .split('\n')
      .filter((line) => / ii/.test(line))
      .map((line) => line.split(' ')[0]),
  );
  return names.filter((name) => !there.has(name));
}

/**
 * Installs Debian packages where we may. Answers which ones are there afterwards.
 * A failure is remembered for an hour, so that the next start does not wait for it again.
 */
export async function installSystemPackages(names, why) {
  if (!canInstallSystemPackages()) return [];
  const missing = await missingSystemPackages(names);
  const wanted = missing.filter((name) => !failedBefore().includes(name));
  if (wanted.length > 0) {
    const env = { ...process.env, DEBIAN_FRONTEND: 'noninteractive' };
    const { code, output } = await during(`Installing ${wanted.join(', ')} (${why})`, async () => {
      await quietly('apt-get', ['update', '-qq'], { env, timeout: 180_000 });
      return quietly('apt-get', ['install', '-y', '-qq', '--no-install-recommends', ...wanted], {
        env,
        timeout: 600_000,
      });
    });
    if (code !== 0) {
      say(`The system's package manager could not install them: ${output.trim().split('\n').at(-1)}`);
      mkdirSync(at('.cache'), { recursive: true });
      writeFileSync(NOT_THERE, JSON.stringify({ at: Date.now(), names: wanted }));
    }
  }
  const stillMissing = new Set(await missingSystemPackages(names));
  return names.filter((name) => !stillMissing.has(name));
}
