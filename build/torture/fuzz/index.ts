/** Spoiled files of every kind, read in processes that are watched: for crashes, hangs and writes elsewhere. */
import { spawn } from 'node:child_process';
import { mkdirSync, mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { KINDS, stillWhole, type Kind } from './readers.ts';

export interface KindReport {
  inputs: number;
  /** How often each came of it: 'read', or the code of the refusal's sentence. */
  outcomes: Record<string, number>;
  /** Processor time of the slowest input, all threads, ms. */
  slowestMs: number;
}

export interface FuzzReport {
  inputs: number;
  kinds: Record<string, KindReport>;
  faults: string[];
}

/** An input that took this much of the processor's time counts as a hang, ms. */
const HANG_MS = 5000;
/** One that is not done with after this long by the clock is ended, however busy the machine is, ms. */
const END_MS = 60_000;
/** Starting up (modules, a caseload, good files), ms. */
const START_MS = 600_000;

/** How the inputs are shared out: what comes from strangers' scanners and phones gets the most. */
const SHARES: Record<Kind, number> = {
  picture: 0.36,
  pdf: 0.18,
  client: 0.17,
  rules: 0.16,
  findings: 0.05,
  ink: 0.08,
};

/** Where the kinds that fill a caseload have it. */
const CASELOADS: Partial<Record<Kind, string>> = { client: 'into', rules: '.' };

type Line =
  { ready: true } | { done: true } | { begin: number } | { end: number; outcome: string; fault: string; ms: number };

interface Ended {
  /** The input at work when the child ended without being done; null when it was done. */
  at: number | null;
  why: string;
}

/**
 * Node itself refuses to write outside `folder` where no caseload is open (its permission model knows no fsync).
 * Native parts it cannot stop: so working, home and temporary folder are empty ones that are looked at afterwards.
 */
function watch(kind: Kind, seed: number, first: number, inputs: number, folder: string, took: (line: Line) => void) {
  return new Promise<Ended>((resolve, reject) => {
    const own = (name: string): string => path.join(folder, name);
    for (const name of ['own', 'cwd', 'home', 'temp']) mkdirSync(own(name), { recursive: true });
    const script = fileURLToPath(new URL('child.ts', import.meta.url));
    const permission = ['--permission', '--allow-fs-read=*', `--allow-fs-write=${own('own')}`, '--allow-addons'];
    const allowed = kind in CASELOADS ? [] : permission;
    const more = [script, kind, String(seed), String(first), String(inputs), own('own')];
    const child = spawn(process.execPath, ['--no-warnings', ...allowed, ...more], {
      cwd: own('cwd'),
      env: { PATH: process.env['PATH'], HOME: own('home'), TMPDIR: own('temp') },
      stdio: ['ignore', 'pipe', 'pipe'],
    });
    let at: number | null = null;
    let done = false;
    let hung = false;
    let errors = '';
    let rest = '';
    const stop = (): void => {
      hung = true;
      child.kill('SIGKILL');
    };
    let timer = setTimeout(stop, START_MS);
    child.stdout.on('data', (chunk: Buffer) => {
      rest += chunk.toString();
      const lines = rest.split('\n');
      rest = lines.pop()!;
      for (const text of lines) {
        const line = JSON.parse(text) as Line;
        clearTimeout(timer);
        if ('begin' in line) at = line.begin;
        if ('done' in line) done = true;
        else timer = setTimeout(stop, 'begin' in line ? END_MS : START_MS);
        took(line);
      }
    });
    child.stderr.on('data', (chunk: Buffer) => (errors = (errors + chunk.toString()).slice(-2000)));
    child.on('error', reject);
    child.on('close', (code, signal) => {
      clearTimeout(timer);
      if (done) return resolve({ at: null, why: '' });
      if (at === null) return reject(new Error(`the ${kind} reader did not start: ${errors}`));
      resolve({
        at,
        why: hung ? `hung for ${END_MS} ms` : `ended the process (${signal ?? code}) ${errors.slice(0, 300)}`,
      });
    });
  });
}

async function fuzzKind(kind: Kind, seed: number, inputs: number, faults: string[]): Promise<KindReport> {
  const report: KindReport = { inputs: 0, outcomes: {}, slowestMs: 0 };
  const folder = mkdtempSync(path.join(tmpdir(), 'fairhand-fuzz-'));
  const own = path.join(folder, 'own');
  try {
    for (let first = 0; first < inputs;) {
      rmSync(own, { recursive: true, force: true });
      const ended = await watch(kind, seed, first, inputs, folder, (line) => {
        if (!('end' in line)) return;
        report.inputs++;
        if (line.fault !== '') faults.push(`${kind} ${line.end}: ${line.fault}`);
        else if (line.ms > HANG_MS) faults.push(`${kind} ${line.end} took ${line.ms} ms`);
        else report.outcomes[line.outcome] = (report.outcomes[line.outcome] ?? 0) + 1;
        report.slowestMs = Math.max(report.slowestMs, line.ms);
      });
      if (ended.at === null) break;
      report.inputs++;
      faults.push(`${kind} ${ended.at} ${ended.why}`);
      first = ended.at + 1;
    }
    for (const name of ['cwd', 'home', 'temp']) {
      const left = readdirSync(path.join(folder, name));
      if (left.length > 0) faults.push(`${kind} wrote elsewhere: ${name}/${left.join(', ')}`);
    }
    const known = ['from', 'into', 'client.tar', 'findings.json', 'backups'];
    const strange = readdirSync(own).filter((name) => !known.includes(name) && !name.startsWith('caseload.'));
    if (strange.length > 0) faults.push(`${kind} left ${strange.join(', ')}`);
    const caseload = CASELOADS[kind];
    if (caseload !== undefined && !(await stillWhole(path.join(own, caseload))))
      faults.push(`${kind}: the caseload is not whole`);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
  return report;
}

/** About `inputs` spoiled files, shared out over the kinds, at least one of each; one kind alone gets them all. */
export async function fuzz(inputs: number, seed: number, kinds: readonly Kind[] = KINDS): Promise<FuzzReport> {
  const report: FuzzReport = { inputs: 0, kinds: {}, faults: [] };
  for (const kind of kinds) {
    const of = await fuzzKind(
      kind,
      seed,
      Math.max(1, Math.round(kinds.length === 1 ? inputs : inputs * SHARES[kind])),
      report.faults,
    );
    report.kinds[kind] = of;
    report.inputs += of.inputs;
  }
  return report;
}
