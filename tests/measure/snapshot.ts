/** What one page gave, kept by method version: the same version must give the same values for ever. */
import { existsSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { measurePage } from '../../renderer/measure/measure-page.ts';
import type { PageResult } from '../../renderer/measure/types.ts';
import { METHOD_VERSION } from '../../renderer/measure/version.ts';
import type { MadePage } from './pages/types.ts';

/** Value, number of readings, ends of its interval and spread of a measure. */
type MeasureNumbers = (number | null)[];

export interface PageSnapshot {
  /** Words of each line. */
  words: number[];
  warnings: string[];
  measures: Record<string, MeasureNumbers>;
}

export type Snapshot = Record<string, PageSnapshot>;

/** Largest difference from what is kept, as a share of the value; below 1e-9 of any unit all is zero. */
const CLOSE = 1e-6;
const ZERO = 1e-9;

export const snapshotFile = (version: string): string =>
  fileURLToPath(new URL(`snapshots/${version}.json`, import.meta.url));

/** A page measured as `npm run accuracy` does: with the scale of its file, and its text where the page gives it. */
export function measureMadePage(page: MadePage): PageResult {
  const scale = { pxPerMm: page.spec.picture.dpi / 25.4, source: 'dpi' as const };
  const text = page.truth.lines.map((line) => line.words.map((word) => word.text).join(' ')).join('\n');
  const options = page.spec.textGiven ? { scale, text } : { scale };
  return measurePage({ width: page.width, height: page.height, data: page.gray }, options);
}

export function snapshotOf(result: PageResult): PageSnapshot {
  return {
    words: result.lines.map((line) => line.words.length),
    warnings: result.warnings.map(({ code }) => code),
    measures: Object.fromEntries(
      result.measures.map(({ code, value, n, low, high, spread }) => [code, [value, n, low, high, spread]]),
    ),
  };
}

/** What is kept of the version in force; null when nothing is. */
export function keptSnapshot(version: string = METHOD_VERSION): Snapshot | null {
  const file = snapshotFile(version);
  return existsSync(file) ? (JSON.parse(readFileSync(file, 'utf8')) as Snapshot) : null;
}

function isClose(a: number | null | undefined, b: number | null | undefined): boolean {
  if (a === b) return true;
  if (typeof a !== 'number' || typeof b !== 'number') return false;
  return Math.abs(a - b) <= Math.max(ZERO, CLOSE * Math.max(Math.abs(a), Math.abs(b)));
}

const NUMBERS = ['value', 'n', 'low', 'high', 'spread'];

/** Where a page differs from what is kept, a sentence each. */
export function differences(kept: PageSnapshot | undefined, now: PageSnapshot): string[] {
  if (!kept) return ['the page is not in the snapshot'];
  const out: string[] = [];
  for (const list of ['words', 'warnings'] as const)
    if (kept[list].join() !== now[list].join()) out.push(`${list} ${kept[list].join()} became ${now[list].join()}`);
  for (const code of new Set([...Object.keys(kept.measures), ...Object.keys(now.measures)])) {
    const [was, is] = [kept.measures[code], now.measures[code]];
    if (!was || !is) out.push(`${code} is ${is ? 'new' : 'gone'}`);
    else
      NUMBERS.forEach((name, i) => {
        if (!isClose(was[i], is[i])) out.push(`${code} ${name} ${String(was[i])} became ${String(is[i])}`);
      });
  }
  return out;
}

/** What to do about differences. */
export const advice = `Values moved under the method version ${METHOD_VERSION}. Where that is meant, raise METHOD_VERSION and run \`node build/gates/measure-snapshot.ts\`: it adds the file of the new version. Old files stay as they are.`;
