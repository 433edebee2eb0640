/**
 * One Fairhand at a time on one caseload folder. A second start asks the first to come forward and ends.
 * The lock is a small file naming the process; it is stale when that process is gone or is another one by now.
 * Signals between the two are files too, so that nothing listens on a socket.
 */
import {
  closeSync,
  mkdirSync,
  openSync,
  readFileSync,
  rmSync,
  statSync,
  watch,
  writeFileSync,
  writeSync,
} from 'node:fs';
import path from 'node:path';

const LOCK = 'in-use.json';
const FORWARD = 'come-forward';

interface Holder {
  pid: number;
  /** When that process began, in the system's own clock ticks; null where the system does not tell. */
  began: string | null;
}

/** A lock that is held until `release`. */
export interface Lock {
  /** Calls back when a second start asks this one to come forward. */
  onForward(listener: () => void): void;
  /** Gives the folder free. Safe to call twice. */
  release(): void;
}

/** Field 22 of /proc/<pid>/stat (proc(5)): start time; tells a new process with an old number from the old one. */
function beganAt(pid: number): string | null {
  try {
    const stat = readFileSync(`/proc/${pid}/stat`, 'utf8');
    return stat.slice(stat.lastIndexOf(')') + 2).split(' ')[19] ?? null;
  } catch {
    return null;
  }
}

function alive(holder: Holder): boolean {
  try {
    process.kill(holder.pid, 0);
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code !== 'EPERM') return false;
  }
  return holder.began === null || holder.began === beganAt(holder.pid);
}

function readHolder(file: string): Holder | null {
  try {
    const parsed: unknown = JSON.parse(readFileSync(file, 'utf8'));
    if (typeof parsed !== 'object' || parsed === null) return null;
    const { pid, began } = parsed as Record<string, unknown>;
    if (typeof pid !== 'number' || !Number.isInteger(pid) || pid <= 0) return null;
    return { pid, began: typeof began === 'string' ? began : null };
  } catch {
    return null;
  }
}

/** A lock without a readable holder is just being written by another start when it is younger than 5 s. */
function isFresh(file: string): boolean {
  try {
    return statSync(file).mtimeMs > Date.now() - 5000;
  } catch {
    return false;
  }
}

/**
 * Takes the folder, or answers null when another running Fairhand has it.
 * @throws when the folder cannot be made or written (the caller says so in a sentence)
 */
export function takeLock(folder: string): Lock | null {
  mkdirSync(folder, { recursive: true, mode: 0o700 });
  const file = path.join(folder, LOCK);
  for (let attempt = 0; attempt < 3; attempt++) {
    try {
      const handle = openSync(file, 'wx', 0o600);
      const holder: Holder = { pid: process.pid, began: beganAt(process.pid) };
      writeSync(handle, JSON.stringify(holder));
      closeSync(handle);
      return held(folder, file);
    } catch (error) {
      if ((error as NodeJS.ErrnoException).code !== 'EEXIST') throw error;
    }
    const holder = readHolder(file);
    if (holder ? alive(holder) : isFresh(file)) return null;
    rmSync(file, { force: true });
  }
  return null;
}

/** True when a running Fairhand has this folder. */
export function isTaken(folder: string): boolean {
  const holder = readHolder(path.join(folder, LOCK));
  return holder !== null && alive(holder);
}

/** Asks the running Fairhand of this folder to bring its window forward. */
export function askForward(folder: string): void {
  writeFileSync(path.join(folder, FORWARD), '', { mode: 0o600 });
}

function held(folder: string, file: string): Lock {
  let free = false;
  let stop: (() => void) | null = null;
  return {
    onForward(listener) {
      const note = path.join(folder, FORWARD);
      rmSync(note, { force: true });
      const watcher = watch(folder, { persistent: false }, (_event, name) => {
        if (name !== FORWARD) return;
        try {
          readFileSync(note);
        } catch {
          return;
        }
        rmSync(note, { force: true });
        listener();
      });
      watcher.on('error', () => watcher.close());
      stop = () => watcher.close();
    },
    release() {
      if (free) return;
      free = true;
      stop?.();
      rmSync(path.join(folder, FORWARD), { force: true });
      rmSync(file, { force: true });
    },
  };
}
