/**
 * What a window's engine writes about itself, for both shells: a folder that is wiped, and the environment that keeps
 * the engine's temporary files in memory where the system has a place for them.
 */
import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, rmSync, statfsSync } from 'node:fs';
import path from 'node:path';
import { removePrintedCopies } from './printed-copies.ts';

/** The folder inside a caseload folder that holds the engine's own files while the window is open. No client's. */
export function profileFolder(dataFolder: string): string {
  return path.join(dataFolder, 'window-profile');
}

/** Removes what an engine wrote about itself. Also run before a start, for what a killed one left. */
export function wipeProfile(profile: string): void {
  rmSync(profile, { recursive: true, force: true, maxRetries: 5, retryDelay: 100 });
}

/** How often and how long a closing engine is watched for what it still writes, in milliseconds. */
const WATCH = { every: 150, atMost: 6000 };

/**
 * Wipes after the window was closed. The engine's own processes end a little later than its window and write once
 * more, so the folder is gone only when it stays gone. What then remains is wiped by the next start.
 */
async function wipeAfterClose(profile: string): Promise<void> {
  let gone = 0;
  for (let waited = 0; waited < WATCH.atMost && gone < 2; waited += WATCH.every) {
    gone = existsSync(profile) ? 0 : gone + 1;
    try {
      wipeProfile(profile);
    } catch {
      // Written to while it was being removed: the next round removes it.
    }
    if (gone < 2) await new Promise((resolve) => setTimeout(resolve, WATCH.every));
  }
}

/** File systems that live in memory: tmpfs and ramfs (numbers of statfs, linux/magic.h). */
const IN_MEMORY: readonly number[] = [0x01021994, 0x858458f6];

/** An engine's shared memory and a printed page need this much room, in bytes. */
const ROOM = 256 * 1024 * 1024;

export interface Place {
  type: number;
  bavail: number;
  bsize: number;
}

const look = (folder: string): Place | null => {
  try {
    return statfsSync(folder);
  } catch {
    return null;
  }
};

/**
 * The folder in memory for the temporary files of this caseload's window, or null where there is none with room:
 * Windows and macOS offer none. It is not made here.
 */
export function memoryFolder(
  dataFolder: string,
  env: NodeJS.ProcessEnv = process.env,
  about: (folder: string) => Place | null = look,
): string | null {
  const places = [env['XDG_RUNTIME_DIR'] ?? '', '/dev/shm'].filter((place) => path.isAbsolute(place));
  for (const place of places) {
    const found = about(place);
    if (found && IN_MEMORY.includes(found.type) && found.bavail * found.bsize >= ROOM) {
      const name = createHash('sha256').update(path.resolve(dataFolder)).digest('hex').slice(0, 16);
      return path.join(place, `fairhand-${name}`);
    }
  }
  return null;
}

export interface EngineFolders {
  profile: string;
  /** For temporary files; null: the system's own temporary folder is used. */
  temporary: string | null;
}

/** Makes both folders new. @throws when the profile cannot be made */
export function makeEngineFolders(dataFolder: string, platform: string = process.platform): EngineFolders {
  const profile = profileFolder(dataFolder);
  wipeProfile(profile);
  mkdirSync(profile, { recursive: true, mode: 0o700 });
  const temporary = platform === 'linux' ? memoryFolder(dataFolder) : null;
  if (temporary === null) return { profile, temporary };
  try {
    wipeProfile(temporary);
    // Not recursive: a folder that somebody else put there meanwhile is not taken.
    mkdirSync(temporary, { mode: 0o700 });
    removePrintedCopies(temporary);
    return { profile, temporary };
  } catch {
    return { profile, temporary: null };
  }
}

/** Wipes both after the window was closed. */
export async function wipeEngineFolders(folders: EngineFolders): Promise<void> {
  await wipeAfterClose(folders.profile);
  if (folders.temporary !== null) wipeProfile(folders.temporary);
}

/**
 * What the engine's environment changes: temporary files (a printed page on its way to the printer) into memory, and
 * the desktop's list of recent files (names of opened scans) into the profile, which is wiped.
 */
export function engineEnvironment(folders: EngineFolders, platform: string = process.platform): Record<string, string> {
  if (platform !== 'linux') return {};
  return {
    XDG_DATA_HOME: path.join(folders.profile, 'desktop-data'),
    ...(folders.temporary !== null && { TMPDIR: folders.temporary }),
  };
}
