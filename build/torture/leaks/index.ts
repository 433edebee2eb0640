/**
 * Types words into every field of every screen of the real window and looks for them, as raw bytes, in every file
 * that changed since: while each screen stays open, after the lock, after kills and after a crash of the page.
 */
import { spawn } from 'node:child_process';
import { randomBytes } from 'node:crypto';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { createInterface } from 'node:readline';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Walk } from './screens.ts';
import { family, search, searchNameless, usualPlaces } from './search.ts';

/** How a walk ends. Window: the browser's process. Main: ours. Page: the process that draws the page. */
export type Ending = 'closed' | 'window killed' | 'main killed' | 'both killed' | 'page crashed' | 'main crashed';

export interface WalkOptions {
  walk: Walk;
  ending: Ending;
  /** Which share of the screens, '0/3' to '2/3': several windows go through them side by side. All: undefined. */
  share?: string;
}

export interface LeakOptions {
  walks: readonly WalkOptions[];
  /** How long each screen stays open before the search, in milliseconds. The usual places are searched while it is typed into as well. */
  waitMs: number;
  /** Walks that go on at the same time; each has its own caseload, window and words. */
  atOnce?: number;
  /** Further places to search in, besides the usual ones and the caseload folder; ['/'] for all. */
  places?: readonly string[];
  /** Told at each screen. */
  tell?: (where: string) => void;
}

export interface LeakReport {
  /** How long each screen stayed open. */
  waitSeconds: number;
  screens: number;
  /** Fields that took the words; fields that take less or a number only. */
  fieldsWithWords: number;
  fieldsWithLess: number;
  searches: number;
  /** Changed files and nameless open files that were read, over all searches. */
  filesRead: number;
  /** Different labels of the fields that were typed into. */
  labels: number;
  walks: string[];
  faults: string[];
}

interface Line {
  screen: string;
  words: number;
  short: number;
  unkept: string[];
  labels: string[];
}

const pause = (ms: number) => new Promise((resolve) => setTimeout(resolve, ms));

/** Processes of the engine below the walker: the browser itself, or those that draw pages. */
function engine(pid: number, what: 'window' | 'page'): number[] {
  return family(pid).filter((each) => {
    try {
      const args = readFileSync(`/proc/${each}/cmdline`, 'utf8').split('\0');
      const type = args.find((arg) => arg.startsWith('--type='));
      if (what === 'page') return type === '--type=renderer';
      return type === undefined && args.some((arg) => arg.startsWith('--user-data-dir='));
    } catch {
      return false;
    }
  });
}

function kill(pids: readonly number[], signal: 'SIGKILL' | 'SIGSEGV'): void {
  for (const pid of pids) {
    try {
      process.kill(pid, signal);
    } catch {
      // Ended already.
    }
  }
}

function end(ending: Ending, main: number): void {
  const window = engine(main, 'window');
  if (ending === 'page crashed') kill(engine(main, 'page'), 'SIGSEGV');
  if (ending === 'window killed' || ending === 'both killed') kill(window, 'SIGKILL');
  if (ending === 'main killed' || ending === 'both killed') kill([main], 'SIGKILL');
  if (ending === 'main crashed') kill([main], 'SIGSEGV');
}

interface Sum extends LeakReport {
  seen: Set<string>;
}

/** One walk in a caseload of its own, to one end. */
async function walk(options: LeakOptions, { walk: which, ending, share = '0/1' }: WalkOptions, report: Sum) {
  const own = mkdtempSync(path.join(tmpdir(), 'fairhand-leaks-'));
  // Letters only, found nowhere else; never said to anybody.
  const marker = `qz${Array.from(randomBytes(9), (byte) => 'bcdfghjklmnpqrstvwxz'[byte % 20]).join('')}`;
  const since = Date.now() - 2000;
  const near = [...new Set([...usualPlaces(), own])];
  const everywhere = [...new Set([...near, ...(options.places ?? [])])];
  const file = fileURLToPath(new URL('walker.ts', import.meta.url));
  const args = ['--no-warnings', file, path.join(own, 'caseload'), marker, which, share];
  // A core file of a crash lies in the working folder, if the system is set so; it is allowed to be of any size.
  const command = ['-c', 'ulimit -c unlimited 2>/dev/null; exec "$0" "$@"', process.execPath, ...args];
  const child = spawn('/bin/sh', command, { stdio: ['pipe', 'pipe', 'pipe'], cwd: own });
  const gone = new Promise<void>((resolve) => child.on('close', () => resolve()));
  const look = (moment: string, pids: readonly number[], places = everywhere) => {
    // Pages that the user saved are hers; their own folder is passed over.
    const named = search(places, [marker], since, (each) => each.startsWith(path.join(own, 'saved')), clean);
    const nameless = process.platform === 'linux' ? searchNameless(pids, [marker]) : { holders: [], read: 0 };
    report.searches++;
    report.filesRead += named.read + nameless.read;
    for (const holder of [...named.holders, ...nameless.holders])
      fault(`${which}, ${ending}, ${moment}: ${holder.replaceAll(marker, '(word)')}`);
  };
  const clean = new Map<string, string>();
  const fault = (words: string) => {
    report.faults.push(words);
    options.tell?.(`fault: ${words}`);
  };
  const alive = () => (process.platform === 'linux' ? family(child.pid!) : []);
  let wrong = '';
  child.stderr.on('data', (part: Buffer) => (wrong += part.toString()));
  child.stdin.on('error', () => undefined);
  const lines = createInterface({ input: child.stdout })[Symbol.asyncIterator]();
  const next = async (): Promise<Line | null> => {
    const { value, done } = await lines.next();
    return done ? null : (JSON.parse(value) as Line);
  };
  try {
    for (;;) {
      const line = await next();
      if (line === null) {
        const words = wrong.replaceAll(marker, '(word)').slice(0, 600);
        fault(`${which}, ${ending}, share ${share}: the walk ended early: ${words}`);
        return;
      }
      const last = ending !== 'closed' && line.screen === 'Screen';
      if (line.screen !== 'closed' && line.screen !== 'locked') report.screens++;
      report.fieldsWithWords += line.words;
      report.fieldsWithLess += line.short;
      for (const label of line.labels) report.seen.add(label);
      for (const label of new Set(line.unkept)) fault(`${line.screen}: nothing keeps what is typed into “${label}”`);
      options.tell?.(`${which}, ${ending}: ${line.screen}, ${line.words} fields`);
      if (ending === 'closed') look(`${line.screen}, while typing`, alive(), near);
      await pause(options.waitMs);
      const pids = alive();
      if (last) {
        end(ending, child.pid!);
        await pause(3000);
        look(`after it: ${ending}`, ending === 'page crashed' ? pids : []);
        return;
      }
      if (ending === 'closed') look(line.screen, pids);
      if (line.screen === 'closed') return;
      child.stdin.write('\n');
    }
  } finally {
    child.kill('SIGKILL');
    await gone;
    await pause(500);
    rmSync(own, { recursive: true, force: true, maxRetries: 5 });
  }
}

export async function leakTest(options: LeakOptions): Promise<LeakReport> {
  const sum: Sum = {
    waitSeconds: options.waitMs / 1000,
    screens: 0,
    fieldsWithWords: 0,
    fieldsWithLess: 0,
    searches: 0,
    filesRead: 0,
    labels: 0,
    walks: [...new Set(options.walks.map(({ walk: which, ending }) => `${which}, ${ending}`))],
    faults: [],
    seen: new Set(),
  };
  const waiting = [...options.walks];
  const one = async () => {
    for (let each = waiting.shift(); each; each = waiting.shift()) await walk(options, each, sum);
  };
  await Promise.all(Array.from({ length: options.atOnce ?? 1 }, one));
  const { seen, ...report } = sum;
  return { ...report, labels: seen.size, faults: [...new Set(report.faults)] };
}
