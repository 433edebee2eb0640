/**
 * Slows guessing down at the window: after some wrong passphrases every further one waits, longer each time, also after
 * a restart. Never destructive. Whoever copies the key file guesses elsewhere: against that stands its slow hash.
 */
import { readFileSync, rmSync } from 'node:fs';
import path from 'node:path';
import { z } from 'zod';
import { writeDurably } from '../../db/files.ts';
import { markOf } from '../../db/keys/key-wraps.ts';
import { Refusal } from '../contract/envelope.ts';

/** Passphrases that may be wrong before waiting begins, and the longest wait. */
const FREE_TRIES = 3;
const LONGEST_WAIT_SECONDS = 60;

const Tries = z.object({ wrong: z.number().int().min(0).max(1_000_000), until: z.number() });
type Tries = z.infer<typeof Tries>;

/** Of the one sign-in for all and the recovery key, and of each person: one's mistypes keep nobody else waiting. */
const AllTries = Tries.extend({ people: z.record(z.string().max(2), Tries).default({}) });
type AllTries = z.infer<typeof AllTries>;

const triesFile = (folder: string): string => path.join(folder, 'caseload.tries.json');

const none: AllTries = { wrong: 0, until: 0, people: {} };

function readAll(folder: string): AllTries {
  try {
    return AllTries.parse(JSON.parse(readFileSync(triesFile(folder), 'utf8')));
  } catch {
    return none;
  }
}

/** One of sixteen: the file names nobody, and who tries many initials waits after sixteen times the free ones. */
const bucketOf = (initials: string): string => String(markOf('tries', initials));

function readTries(folder: string, initials: string): Tries {
  const all = readAll(folder);
  return initials === '' ? all : (all.people[bucketOf(initials)] ?? none);
}

/** Seconds that the next try has to wait; 0 = none. A clock that was set back makes no wait longer than the longest. */
function secondsToWait(folder: string, now: number, initials: string): number {
  const tries = readTries(folder, initials);
  const latest = now + LONGEST_WAIT_SECONDS * 1000;
  if (tries.until > latest) write(folder, initials, { ...tries, until: latest });
  return Math.max(0, Math.ceil((Math.min(tries.until, latest) - now) / 1000));
}

/** Where nothing can be written the wait holds for none: the hash alone slows guessing then. */
function write(folder: string, initials: string, { wrong, until }: Tries): void {
  const all = readAll(folder);
  const next =
    initials === ''
      ? { wrong, until, people: all.people }
      : { ...all, people: { ...all.people, [bucketOf(initials)]: { wrong, until } } };
  try {
    writeDurably(triesFile(folder), JSON.stringify(next));
  } catch {
    // A read-only or full disk.
  }
}

/** Notes a wrong passphrase. */
function noteWrongTry(folder: string, now: number, initials: string): void {
  const wrong = readTries(folder, initials).wrong + 1;
  const over = wrong - FREE_TRIES;
  const until = over < 0 ? 0 : now + Math.min(LONGEST_WAIT_SECONDS, 2 ** over) * 1000;
  write(folder, initials, { wrong, until });
}

function forgetTries(folder: string, initials: string): void {
  const { people, ...all } = readAll(folder);
  const others = Object.entries(people).filter(([bucket]) => initials !== '' && bucket !== bucketOf(initials));
  const one = initials === '' ? { wrong: 0, until: 0 } : all;
  if (others.length === 0 && one.wrong === 0) rmSync(triesFile(folder), { force: true });
  else write(folder, initials, { wrong: 0, until: 0 });
}

/**
 * One attempt, where none has to wait.
 * @param now instant in ms, asked again when the attempt has failed
 * @param initials of whoever tries; '' with one sign-in for all, and with the recovery key
 * @throws Refusal wait-before-retry, and what the attempt throws
 */
export async function tried<T>(
  attempt: () => Promise<T>,
  folder: string,
  now: () => number,
  initials: string,
): Promise<T> {
  const wait = secondsToWait(folder, now(), initials);
  if (wait > 0) throw new Refusal('wait-before-retry', String(wait));
  try {
    const value = await attempt();
    forgetTries(folder, initials);
    return value;
  } catch (error) {
    if (error instanceof Refusal && (error.code === 'wrong-passphrase' || error.code === 'wrong-recovery-key'))
      noteWrongTry(folder, now(), initials);
    throw error;
  }
}
