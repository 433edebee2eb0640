/**
 * This computer's own system with a sheet laid over it (overlayfs, in a mount namespace of its own): what is installed
 * there is really installed, and nothing of it reaches the system below. Linux, as root.
 */
import { execFileSync, spawnSync } from 'node:child_process';
import { copyFileSync, lstatSync, mkdirSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import path from 'node:path';

const layers = (base: string) => ['upper', 'work', 'system'].map((name) => path.join(base, name));

/** Lays the sheet over / and runs a command of it. */
function enter(base: string, command: string): { status: number | null; said: string } {
  const [upper, work, system] = layers(base) as [string, string, string];
  for (const folder of [upper, work, system]) mkdirSync(folder, { recursive: true });
  const overlay = `mount -t overlay overlay -o 'lowerdir=/,upperdir=${upper},workdir=${work}' '${system}'`;
  const run = spawnSync('unshare', ['-m', 'sh', '-c', `${overlay} && exec chroot '${system}' ${command}`], {
    encoding: 'utf8',
    env: { ...process.env, PATH: '/usr/local/sbin:/usr/local/bin:/usr/sbin:/usr/bin:/sbin:/bin', LC_ALL: 'C' },
  });
  return { status: run.status, said: `${run.stdout}${run.stderr}` };
}

/** A sentence where there can be none; null where there can. */
export function whyNoThrowAwaySystem(): string | null {
  if (process.platform !== 'linux' || process.getuid?.() !== 0) return 'installing takes Linux and root';
  const base = mkdtempSync('/tmp/fairhand-overlay-');
  try {
    execFileSync('dpkg', ['--version'], { stdio: 'ignore' });
    return enter(base, 'true').status === 0 ? null : 'this system lets nobody lay a sheet over it (overlayfs)';
  } catch {
    return 'there is no dpkg on this system';
  } finally {
    rmSync(base, { recursive: true, force: true });
  }
}

/** Regular files under a folder, sorted; what was deleted below leaves a device of its name, which is no file. */
function filesUnder(folder: string): string[] {
  const names = readdirSync(folder, { recursive: true, encoding: 'utf8' });
  return names.filter((name) => !lstatSync(path.join(folder, name)).isDirectory()).sort();
}

/** Runs the lines as one script, with the package at /fairhand.deb. Answers what they said and which files changed. */
export function inThrowAwaySystem(within: string, deb: string, lines: string[]): { said: string; changed: string[] } {
  const base = mkdtempSync(path.join(within, 'overlay-'));
  const [upper] = layers(base) as [string];
  mkdirSync(upper, { recursive: true });
  copyFileSync(deb, path.join(upper, 'fairhand.deb'));
  writeFileSync(path.join(upper, 'fairhand-steps.sh'), `${lines.join('\n')}\n`);
  const { said } = enter(base, 'sh /fairhand-steps.sh');
  rmSync(path.join(upper, 'fairhand-steps.sh'));
  const changed = filesUnder(upper);
  rmSync(base, { recursive: true, force: true });
  return { said, changed };
}
