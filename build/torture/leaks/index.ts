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
import { family, search, searchNameless, usualPlaces } from './search.ts';

/** How a walk ends. Window: the browser's process. Main: ours. Page: the process that draws the page. */
export type Ending = 'closed' | 'window killed' | 'main killed' | 'both killed' | 'page crashed';

export interface LeakOptions {
  which: 'all' | 'few';
  /** How long each screen stays open before the search, in milliseconds. */
  waitMs: number;
  endings: readonly Ending[];
  /** Further places to search in, besides the usual ones and the caseload folder; ['/'] for all. */
  places?: readonly string[];
}

export interface LeakReport {
  screens: number;
  /** Fields that took the words; fields that take less or a number only. */
  fieldsWithWords: number;
  fieldsWithLess: number;
  searches: number;
  /** Changed files and nameless open files that were read, over all searches. */
  filesRead: number;
  endings: string[];
  faults: string[];
}

interface Line {
  screen: string;
  words: number;
  short: number;
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
}

/** One walk in a caseload of its own, to one end. */
async function walk(options: LeakOptions, which: LeakOptions['which'], ending: Ending, report: LeakReport) {
  const own = mkdtempSync(path.join(tmpdir(), 'fairhand-leaks-'));
  // Letters only, found nowhere else; never said to anybody.
  const marker = `qz${Array.from(randomBytes(9), (byte) => 'bcdfghjklmnpqrstvwxz'[byte % 20]).join('')}`;
  const since = Date.now() - 2000;
  const places = [...new Set([...usualPlaces(), own, ...(options.places ?? [])])];
  const file = fileURLToPath(new URL('walker.ts', import.meta.url));
  const child = spawn(process.execPath, ['--no-warnings', file, path.join(own, 'caseload'), marker, which], {
    stdio: ['pipe', 'pipe', 'pipe'],
  });
  const gone = new Promise<void>((resolve) => child.on('close', () => resolve()));
  const look = (moment: string, pids: readonly number[]) => {
    // Pages that the user saved are hers; their own folder is passed over.
    const named = search(places, [marker], since, (each) => each.startsWith(path.join(own, 'saved')));
    const nameless = process.platform === 'linux' ? searchNameless(pids, [marker]) : { holders: [], read: 0 };
    report.searches++;
    report.filesRead += named.read + nameless.read;
    for (const holder of [...named.holders, ...nameless.holders]) {
      report.faults.push(`${ending}, ${moment}: ${holder.replaceAll(marker, '(word)')}`);
    }
  };
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
        report.faults.push(`${ending}: the walk ended early: ${wrong.replaceAll(marker, '(word)').slice(0, 600)}`);
        return;
      }
      const last = ending !== 'closed' && line.screen === 'Screen';
      if (line.screen !== 'closed' && line.screen !== 'locked') report.screens++;
      report.fieldsWithWords += line.words;
      report.fieldsWithLess += line.short;
      await pause(options.waitMs);
      const pids = process.platform === 'linux' ? family(child.pid!) : [];
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
  const report: LeakReport = {
    screens: 0,
    fieldsWithWords: 0,
    fieldsWithLess: 0,
    searches: 0,
    filesRead: 0,
    endings: [...options.endings],
    faults: [],
  };
  for (const ending of options.endings) {
    await walk(options, ending === 'closed' ? options.which : 'few', ending, report);
  }
  return report;
}
