/**
 * Types words into every field of every screen of the real window and looks for them, as raw bytes, in every file
 * that changed since: while each screen stays open, after the lock, after kills and after a crash of the page.
 */
import { spawn } from 'node:child_process';
import { randomBytes } from 'node:crypto';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { createInterface } from 'node:readline';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Typed } from './fields.ts';
import { gate } from './gate.ts';
import { fieldPlaces } from './inventory.ts';
import type { Walk } from './screens.ts';
import { family, usualPlaces } from './search.ts';
import { searcher, type Searcher } from './searcher.ts';
import { windowThatKnowsItsLines } from './window.ts';

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
  /** How long each screen stays open before the search, in milliseconds. It is searched while it is typed into as well. */
  waitMs: number;
  /** Walks that go on at the same time; each has its own caseload and window. */
  atOnce?: number;
  /** How many of them start or type at the same time; the others wait on their screens, which costs no processor. */
  hands?: number;
  /** Where to search, instead of the usual places of a user's files; ['/'] for everywhere. */
  places?: readonly string[];
  /** Whether fields of the source that no walk reached are told. The window is built anew for that. */
  everyField?: boolean;
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
  /** Leaks planted to prove the search. */
  planted: string;
  /** Labels of the fields that were typed into, by screen. */
  typedInto: Record<string, string[]>;
  /** Fields in the source of the window, where they were counted, and those that no walk typed into. */
  fieldsInSource?: number;
  notReached?: string[];
  faults: string[];
}

interface Line extends Typed {
  screen: string;
  /** Why a screen was not reached, in its own words. */
  failed?: string;
}

const pause = (ms: number) => new Promise((resolve) => setTimeout(resolve, ms));

/** Processes of the engine below the walker: the browser itself, or those that draw pages. */
export function engine(pid: number, what: 'window' | 'page'): number[] {
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

/** What all walks share. */
interface Sum extends LeakReport {
  seen: Set<string>;
  places: Set<string>;
  marker: string;
  base: string;
  window: string;
  disk: Searcher;
  told: Set<string>;
  hands: ReturnType<typeof gate>;
}

function count(report: Sum, line: Line): void {
  if (line.screen !== 'closed' && line.screen !== 'locked') report.screens++;
  report.fieldsWithWords += line.words;
  report.fieldsWithLess += line.short;
  const here = new Set([...(report.typedInto[line.screen] ?? []), ...line.labels]);
  if (here.size > 0) report.typedInto[line.screen] = [...here];
  for (const label of line.labels) report.seen.add(label);
  for (const place of line.places) report.places.add(place);
}

/** One walk in a caseload of its own, to one end. */
async function walk(options: LeakOptions, { walk: which, ending, share = '0/1' }: WalkOptions, report: Sum) {
  await report.hands.enter();
  let atWork = true;
  const rest = () => {
    if (atWork) report.hands.leave();
    atWork = false;
  };
  const { marker } = report;
  const own = mkdtempSync(path.join(report.base, 'walk-'));
  const file = fileURLToPath(new URL('walker.ts', import.meta.url));
  const args = ['--no-warnings', file, path.join(own, 'caseload'), marker, which, share, report.window];
  // A core file of a crash lies in the working folder, if the system is set so; it is allowed to be of any size.
  const command = ['-c', 'ulimit -c unlimited 2>/dev/null; exec "$0" "$@"', process.execPath, ...args];
  const child = spawn('/bin/sh', command, { stdio: ['pipe', 'pipe', 'pipe'], cwd: own });
  const gone = new Promise<void>((resolve) => child.on('close', () => resolve()));
  const fault = (words: string) => {
    report.faults.push(words);
    options.tell?.(`fault: ${words}`);
  };
  const look = async (moment: string, pids: readonly number[]) => {
    const { holders, read } = await report.disk.look(pids);
    report.filesRead += read;
    for (const holder of holders) {
      if (report.told.has(holder)) continue;
      report.told.add(holder);
      fault(`${which}, ${ending}, ${moment}: ${holder.replaceAll(marker, '(word)')}`);
    }
  };
  const alive = () => (process.platform === 'linux' ? family(child.pid!) : []);
  let wrong = '';
  child.stderr.on('data', (part: Buffer) => (wrong += part.toString()));
  child.stdin.on('error', () => undefined);
  const lines = createInterface({ input: child.stdout })[Symbol.asyncIterator]();
  const next = async (): Promise<Line | null> => {
    const { value, done } = await lines.next();
    rest();
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
      count(report, line);
      if (line.failed) fault(`${which}, ${ending}: ${line.screen} was not reached: ${line.failed}`);
      for (const label of new Set(line.unkept)) fault(`${line.screen}: nothing keeps what is typed into “${label}”`);
      options.tell?.(`${which}, ${ending}: ${line.screen}, ${line.labels.length} fields`);
      if (ending === 'closed') await look(`${line.screen}, while typing`, alive());
      await pause(options.waitMs);
      const pids = alive();
      if (last) {
        end(ending, child.pid!);
        await pause(3000);
        await look(`after it: ${ending}`, ending === 'page crashed' ? pids : []);
        return;
      }
      if (ending === 'closed') await look(line.screen, pids);
      if (line.screen === 'closed') return;
      await report.hands.enter();
      atWork = true;
      child.stdin.write('\n');
    }
  } finally {
    rest();
    child.kill('SIGKILL');
    await gone;
    await pause(500);
    rmSync(own, { recursive: true, force: true, maxRetries: 5 });
  }
}

export async function leakTest(options: LeakOptions): Promise<LeakReport> {
  const base = mkdtempSync(path.join(tmpdir(), 'fairhand-leaks-'));
  // Letters only, found nowhere else; never said to anybody.
  const marker = `qz${Array.from(randomBytes(9), (byte) => 'bcdfghjklmnpqrstvwxz'[byte % 20]).join('')}`;
  const disk = searcher({
    places: options.places ?? usualPlaces(),
    words: [marker],
    since: Date.now() - 2000,
    // Pages that the user saved are hers; their own folder is passed over.
    passed: /^walk-[^/]+\/saved\//,
    below: base,
  });
  const sum: Sum = {
    waitSeconds: options.waitMs / 1000,
    screens: 0,
    fieldsWithWords: 0,
    fieldsWithLess: 0,
    searches: 0,
    filesRead: 0,
    labels: 0,
    walks: [...new Set(options.walks.map(({ walk: which, ending }) => `${which}, ${ending}`))],
    planted: '',
    typedInto: {},
    faults: [],
    seen: new Set(),
    places: new Set(),
    marker,
    base,
    window: options.everyField ? windowThatKnowsItsLines() : '',
    disk,
    told: new Set(),
    hands: gate(options.hands ?? options.atOnce ?? 1),
  };
  const waiting = [...options.walks];
  const one = async () => {
    for (let each = waiting.shift(); each; each = waiting.shift()) await walk(options, each, sum);
  };
  try {
    sum.planted = await findPlanted(sum);
    await Promise.all(Array.from({ length: options.atOnce ?? 1 }, one));
  } finally {
    await disk.stop();
    rmSync(base, { recursive: true, force: true, maxRetries: 5 });
  }
  const { waitSeconds, screens, fieldsWithWords, fieldsWithLess, filesRead, walks, planted, typedInto } = sum;
  return {
    ...{ waitSeconds, screens, fieldsWithWords, fieldsWithLess, filesRead, walks, planted },
    searches: disk.count,
    labels: sum.seen.size,
    ...(options.everyField ? reached(sum) : {}),
    faults: [...new Set(sum.faults)],
    typedInto,
  };
}

/** The search is proved on leaks of our own, as a browser's session file and an encoded one would hold them. */
async function findPlanted({ base, marker, disk, faults }: Sum): Promise<string> {
  const folder = mkdtempSync(path.join(base, 'planted-'));
  const forms = [
    Buffer.from(marker),
    Buffer.from(marker, 'utf16le'),
    Buffer.from(Buffer.from(marker).toString('base64')),
  ];
  const files = forms.map((form, n) => {
    const file = path.join(folder, `Apps_${n}`);
    writeFileSync(file, Buffer.concat([randomBytes(40_000), form, randomBytes(40_000)]));
    return file;
  });
  const { holders } = await disk.look([]);
  rmSync(folder, { recursive: true });
  const found = files.filter((file) => holders.includes(file)).length;
  if (found < files.length) faults.push(`of ${files.length} planted leaks ${found} were found`);
  return `${found} of ${files.length} found`;
}

/** Fields of the source that were and were not typed into. One that was not is a fault. */
function reached(sum: Sum) {
  const all = fieldPlaces();
  const missed = all.filter(({ at }) => !sum.places.has(at));
  const notReached = missed.map(({ at, says }) => `${says} (${at.replace('renderer/window/', '')})`);
  for (const each of notReached) sum.faults.push(`no walk typed into ${each}`);
  return { fieldsInSource: all.length, notReached };
}
