/** Where the caseload lives on each system, when the therapist has not chosen a folder. */
import { existsSync } from 'node:fs';
import { homedir } from 'node:os';
import path from 'node:path';

export interface Machine {
  platform: string;
  home: string;
  env: Readonly<Record<string, string | undefined>>;
  /** Whether a file is there; asked for the caseload of earlier versions only. */
  exists?: (file: string) => boolean;
}

/** A choice that cannot be used, as a sentence for the therapist. */
export class FolderProblem extends Error {}

/**
 * The caseload folder: the one asked for (`--data`), else FAIRHAND_DATA, else the system's own place for an
 * application's data (XDG base directory specification; %LOCALAPPDATA%; Library/Application Support).
 * On Windows a live database never lies in the roaming profile, which is copied at sign-out; a caseload that an
 * earlier version put there is still opened there, for moving it is the therapist's decision.
 */
export function dataFolder(asked: string | null, machine: Machine): string {
  const chosen = asked ?? machine.env['FAIRHAND_DATA'];
  if (chosen !== undefined && chosen !== null) {
    if (chosen.trim() === '') throw new FolderProblem('The caseload folder after --data is empty. Name a folder.');
    return path.resolve(chosen);
  }
  if (machine.platform === 'win32') {
    const { env, home } = machine;
    const { join } = path.win32;
    const roaming = join(env['APPDATA'] ?? join(home, 'AppData', 'Roaming'), 'Fairhand');
    const local = join(env['LOCALAPPDATA'] ?? join(home, 'AppData', 'Local'), 'Fairhand');
    return machine.exists?.(join(roaming, 'caseload.db')) && !machine.exists(join(local, 'caseload.db'))
      ? roaming
      : local;
  }
  if (machine.platform === 'darwin') return path.join(machine.home, 'Library', 'Application Support', 'Fairhand');
  const xdg = machine.env['XDG_DATA_HOME'];
  return path.join(xdg && path.isAbsolute(xdg) ? xdg : path.join(machine.home, '.local', 'share'), 'fairhand');
}

/** The machine that this process runs on. */
export const thisMachine = (): Machine => ({
  platform: process.platform,
  home: homedir(),
  env: process.env,
  exists: existsSync,
});
