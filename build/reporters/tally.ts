/** What a run of tests came to: the form in which both runners hand it to build/test.ts. */
import { mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';

export interface Tally {
  passed: number;
  /** Names of what failed, with the first line of why. */
  failed: string[];
  skipped: { name: string; reason: string }[];
}

export const emptyTally = (): Tally => ({ passed: 0, failed: [], skipped: [] });

const file = (runner: string) => fileURLToPath(new URL(`../../.cache/tally-${runner}.json`, import.meta.url));

/** Removes an earlier run's result, so that a runner which dies is not taken for one that passed. */
export function forgetTally(runner: string): void {
  rmSync(file(runner), { force: true });
}

export function writeTally(runner: string, tally: Tally): void {
  mkdirSync(path.dirname(file(runner)), { recursive: true });
  writeFileSync(file(runner), JSON.stringify(tally));
}

/** Reads what a runner left; a runner that left nothing counts as one failure. */
export function readTally(runner: string): Tally {
  try {
    return JSON.parse(readFileSync(file(runner), 'utf8')) as Tally;
  } catch {
    return { ...emptyTally(), failed: [`${runner} did not finish`] };
  }
}

/** One line of a failure: enough to find it, the runner's own output has the rest. */
export const firstLine = (text: string | undefined): string => (text ?? '').split('\n')[0]?.slice(0, 200) ?? '';

export function addTallies(tallies: readonly Tally[]): Tally {
  return {
    passed: tallies.reduce((sum, tally) => sum + tally.passed, 0),
    failed: tallies.flatMap((tally) => tally.failed),
    skipped: tallies.flatMap((tally) => tally.skipped),
  };
}

/** The last line of `npm test`. */
export function lastLine(tally: Tally): string {
  const skipped = tally.skipped.length > 0 ? `, ${tally.skipped.length} skipped` : '';
  return `${tally.passed} passed, ${tally.failed.length} failed${skipped}`;
}

/** A run succeeded when something was tested and nothing failed. */
export const succeeded = (tally: Tally): boolean => tally.passed > 0 && tally.failed.length === 0;
