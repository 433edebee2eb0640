/**
 * Slows guessing down at the window: after some wrong passphrases every further one waits, longer each time, also after
 * a restart. Never destructive. Whoever copies the key file guesses elsewhere: against that stands its slow hash.
 */
import { readFileSync, rmSync } from 'node:fs';
import path from 'node:path';
import { z } from 'zod';
import { writeDurably } from '../../db/files.ts';

/** Passphrases that may be wrong before waiting begins, and the longest wait. */
const FREE_TRIES = 3;
const LONGEST_WAIT_SECONDS = 60;

const Tries = z.object({ wrong: z.number().int().min(0).max(1_000_000), until: z.number() });
type Tries = z.infer<typeof Tries>;

const triesFile = (folder: string): string => path.join(folder, 'caseload.tries.json');

function readTries(folder: string): Tries {
  try {
    return Tries.parse(JSON.parse(readFileSync(triesFile(folder), 'utf8')));
  } catch {
    return { wrong: 0, until: 0 };
  }
}

/** Seconds that the next try has to wait; 0 = none. A clock that was set back makes no wait longer than the longest. */
export function secondsToWait(folder: string, now: number): number {
  const tries = readTries(folder);
  const latest = now + LONGEST_WAIT_SECONDS * 1000;
  if (tries.until > latest) write(folder, { ...tries, until: latest });
  return Math.max(0, Math.ceil((Math.min(tries.until, latest) - now) / 1000));
}

/** Where nothing can be written the wait holds for none: the hash alone slows guessing then. */
function write(folder: string, tries: Tries): void {
  try {
    writeDurably(triesFile(folder), JSON.stringify(tries));
  } catch {
    // A read-only or full disk.
  }
}

/** Notes a wrong passphrase. */
export function noteWrongTry(folder: string, now: number): void {
  const wrong = readTries(folder).wrong + 1;
  const over = wrong - FREE_TRIES;
  const until = over < 0 ? 0 : now + Math.min(LONGEST_WAIT_SECONDS, 2 ** over) * 1000;
  write(folder, { wrong, until });
}

export function forgetTries(folder: string): void {
  rmSync(triesFile(folder), { force: true });
}
