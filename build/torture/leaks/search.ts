/** Looks for words as raw bytes, in every encoding that a browser or a system writes them in. */
import { spawnSync } from 'node:child_process';
import { existsSync, fstatSync, openSync, closeSync, readdirSync, readFileSync, readlinkSync, statSync } from 'node:fs';
import type { Dirent } from 'node:fs';
import { homedir, tmpdir } from 'node:os';
import path from 'node:path';

/** Base64 of a text that may begin at any of three places inside a longer one; what its neighbors change is cut off. */
function base64Forms(bytes: Buffer): Buffer[] {
  return [0, 1, 2].map((lead) => {
    const text = Buffer.concat([Buffer.alloc(lead), bytes])
      .toString('base64')
      .replace(/=+$/, '');
    const from = Math.ceil((lead * 8) / 6);
    const to = Math.floor(((lead + bytes.length) * 8) / 6);
    return Buffer.from(text.slice(from, to));
  });
}

/** The words in UTF-8, UTF-16 of both byte orders, and base64 of each of these. */
export function inEveryEncoding(words: readonly string[]): Buffer[] {
  return words.flatMap((word) => {
    const little = Buffer.from(word, 'utf16le');
    const plain = [Buffer.from(word, 'utf8'), little, Buffer.from(little).swap16()];
    return [...plain, ...plain.flatMap(base64Forms)];
  });
}

/** Where a browser, a desktop and a system keep files of a user, besides the caseload folder. */
export function usualPlaces(): string[] {
  const places = [tmpdir(), homedir(), '/tmp', '/var/tmp', '/dev/shm', process.env['XDG_RUNTIME_DIR'] ?? '/run/user'];
  const real = [...new Set(places.map((place) => path.resolve(place)))].filter((place) => existsSync(place));
  // A place inside another is searched once.
  return real.filter((place) => !real.some((other) => other !== place && place.startsWith(`${other}${path.sep}`)));
}

/** Everything the kernel makes up, and installed packages and version stores: nobody writes client words there. */
const PASSED = /^\/(proc|sys|dev(?!\/shm))(\/|$)|\/(node_modules|\.git)(\/|$)/;

function* filesUnder(folder: string): Generator<string> {
  let entries: Dirent[];
  try {
    entries = readdirSync(folder, { withFileTypes: true });
  } catch {
    return;
  }
  for (const entry of entries) {
    const full = path.join(folder, entry.name);
    if (PASSED.test(full) && full !== '/dev') continue;
    if (entry.isDirectory()) yield* filesUnder(full);
    else if (entry.isFile()) yield full;
  }
}

/** On Linux `find` looks at half a million files in three seconds, Node in ten. Null where there is none. */
function changedByFind(places: readonly string[], since: number): string[] | null {
  if (process.platform !== 'linux') return null;
  const passed = ['/proc', '/sys', '/dev/[!s]*'].flatMap((each) => ['-path', each, '-o']);
  const prune = ['(', ...passed, '-name', 'node_modules', '-o', '-name', '.git', ')', '-prune'];
  const when = `@${Math.floor(since / 1000)}`;
  const changed = ['(', '-newerct', when, '-o', '-newermt', when, ')'];
  const args = [...places, ...prune, '-o', '-type', 'f', ...changed, '-print0'];
  const { stdout, error } = spawnSync('find', args, { encoding: 'utf8', maxBuffer: 1 << 28 });
  // What may not be read or is gone meanwhile is complained of; the rest stands.
  return error ? null : stdout.split('\0').filter(Boolean);
}

/** Files in these places that changed since then, in milliseconds. */
export function changedSince(places: readonly string[], since: number): string[] {
  const files = changedByFind(places, since) ?? places.flatMap((place) => [...filesUnder(place)]);
  return [...new Set(files)];
}

const LARGEST = 500_000_000;

export interface Found {
  /** Files that hold a word, or bear one in their name. */
  holders: string[];
  /** Files that changed since the beginning and were read. */
  read: number;
}

/**
 * @param since ms; older files are not read. `passed` names files that may hold the words (what the user saved).
 * @param clean what an earlier search for the same words read and found clean, and has not changed since, is not read again
 */
export function search(
  places: readonly string[],
  words: readonly string[],
  since: number,
  passed: (file: string) => boolean = () => false,
  clean = new Map<string, string>(),
): Found {
  const forms = inEveryEncoding(words);
  const found: Found = { holders: [], read: 0 };
  for (const file of changedSince(places, since)) {
    try {
      const about = statSync(file);
      if (passed(file) || about.size > LARGEST || Math.max(about.mtimeMs, about.ctimeMs) < since) continue;
      const state = `${about.ino} ${about.mtimeMs} ${about.ctimeMs} ${about.size}`;
      if (clean.get(file) === state) continue;
      const bytes = readFileSync(file);
      found.read++;
      if (forms.some((form) => bytes.includes(form)) || words.some((word) => file.includes(word))) {
        found.holders.push(file);
      } else clean.set(file, state);
    } catch {
      // Gone, or not ours to read: then it is not the window's.
    }
  }
  return found;
}

/** All processes below one, itself included (Linux). */
export function family(pid: number): number[] {
  const parents = new Map<number, number>();
  for (const name of readdirSync('/proc').filter((each) => /^\d+$/.test(each))) {
    try {
      const stat = readFileSync(`/proc/${name}/stat`, 'utf8');
      parents.set(Number(name), Number(stat.slice(stat.lastIndexOf(')') + 2).split(' ')[1]));
    } catch {
      // Ended while we looked.
    }
  }
  const all = [pid];
  for (let n = 0; n < all.length; n++) {
    for (const [child, parent] of parents) if (parent === all[n]) all.push(child);
  }
  return all;
}

/** Files without a name that these processes still hold open on a disk (not in memory), holding a word (Linux). */
export function searchNameless(pids: readonly number[], words: readonly string[]): Found {
  const forms = inEveryEncoding(words);
  const found: Found = { holders: [], read: 0 };
  for (const pid of pids) {
    let handles: string[];
    try {
      handles = readdirSync(`/proc/${pid}/fd`);
    } catch {
      continue;
    }
    for (const handle of handles) {
      const link = `/proc/${pid}/fd/${handle}`;
      try {
        const target = readlinkSync(link);
        if (!target.endsWith(' (deleted)') || /^\/(memfd:|dev\/shm\/|SYSV)/.test(target)) continue;
        const open = openSync(link, 'r');
        try {
          if (!fstatSync(open).isFile()) continue;
          const bytes = readFileSync(open);
          found.read++;
          if (forms.some((form) => bytes.includes(form))) found.holders.push(`${pid}: ${target}`);
        } finally {
          closeSync(open);
        }
      } catch {
        // Closed while we looked.
      }
    }
  }
  return found;
}
