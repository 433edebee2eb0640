/** Where the caseload lives on each system, when the therapist has not chosen a folder. */
import path from 'node:path';

export interface Machine {
  platform: string;
  home: string;
  env: Readonly<Record<string, string | undefined>>;
}

/** A choice that cannot be used, as a sentence for the therapist. */
export class FolderProblem extends Error {}

/**
 * The caseload folder: the one asked for (`--data`), else FAIRHAND_DATA, else the system's own place for an
 * application's data (XDG base directory specification; %APPDATA%; Library/Application Support).
 */
export function dataFolder(asked: string | null, machine: Machine): string {
  const chosen = asked ?? machine.env['FAIRHAND_DATA'];
  if (chosen !== undefined && chosen !== null) {
    if (chosen.trim() === '') throw new FolderProblem('The caseload folder after --data is empty. Name a folder.');
    return path.resolve(chosen);
  }
  if (machine.platform === 'win32') {
    return path.join(machine.env['APPDATA'] ?? path.join(machine.home, 'AppData', 'Roaming'), 'Fairhand');
  }
  if (machine.platform === 'darwin') return path.join(machine.home, 'Library', 'Application Support', 'Fairhand');
  const xdg = machine.env['XDG_DATA_HOME'];
  return path.join(xdg && path.isAbsolute(xdg) ? xdg : path.join(machine.home, '.local', 'share'), 'fairhand');
}
