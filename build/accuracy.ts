/**
 * `npm run accuracy [-- NAME …]`: every page of tests/pages/specs.ts through the measuring engine. Prints each page's
 * errors, then worst and median of each quantity beside its limit; leaves the worst page as a picture and the report
 * as JSON in out/accuracy. Exit 1 when a limit is missed.
 */
import { mkdirSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { overlayPng } from '../electron/files/overlay.ts';
import { measurePage } from '../renderer/sample/measure/page.ts';
import type { PageResult } from '../renderer/sample/measure/types.ts';
import { makePage } from '../tests/pages/generate.ts';
import { isMissed, judgePage } from '../tests/pages/judge.ts';
import type { Judgement } from '../tests/pages/judge.ts';
import { SPECS } from '../tests/pages/specs.ts';
import type { MadePage } from '../tests/pages/types.ts';
import { digitHolesReport } from './accuracy-digits.ts';
import { median } from './letters/glyph.ts';

const OUT = fileURLToPath(new URL('../out/accuracy/', import.meta.url));

interface JudgedPage {
  name: string;
  rows: Judgement[];
  ms: number;
}

function measured(page: MadePage): PageResult {
  const scale = { pxPerMm: page.spec.picture.dpi / 25.4, source: 'dpi' as const };
  return measurePage({ width: page.width, height: page.height, data: page.gray }, { scale });
}

const shown = (value: number): string => (Number.isFinite(value) ? String(Number(value.toPrecision(3))) : '-');

function printPage({ name, rows, ms }: JudgedPage): void {
  const missed = rows.filter(isMissed);
  const facts = rows.map((row) => `${row.quantity} ${shown(row.error)}${row.unit}${isMissed(row) ? ' !' : ''}`);
  console.log(`${missed.length ? 'MISSED ' : 'ok     '}${name} (${Math.round(ms)} ms): ${facts.join(' · ')}`);
}

/** Results in mm of the page written once and scanned at four resolutions must agree within 2 %. */
function resolutionSpread(sizes: Map<string, number>): Judgement | null {
  const values = [...sizes].filter(([name]) => name.startsWith('dpi-')).map(([, size]) => size);
  if (values.length < 2) return null;
  const error = 100 * (Math.max(...values) / Math.min(...values) - 1);
  return { quantity: 'same page at 150 to 600 dpi, x-height', error, unit: '%', limit: 2 };
}

function printTable(judged: readonly JudgedPage[]): void {
  const quantities = [...new Set(judged.flatMap(({ rows }) => rows.map((row) => row.quantity)))];
  console.log(
    `\n${'quantity'.padEnd(24)}${'pages'.padStart(6)}${'median'.padStart(10)}${'worst'.padStart(10)}  missed, worst page`,
  );
  for (const quantity of quantities) {
    const all = judged.flatMap(({ name, rows }) =>
      rows.filter((row) => row.quantity === quantity).map((row) => ({ name, ...row })),
    );
    const worst = all.reduce((a, b) => (b.error > a.error ? b : a));
    const missed = all.filter(isMissed).length;
    const limits = [...new Set(all.map((row) => row.limit))].filter((limit) => limit !== null && limit > 0);
    console.log(
      quantity.padEnd(24) +
        String(all.length).padStart(6) +
        shown(median(all.map((row) => row.error))).padStart(10) +
        shown(worst.error).padStart(10) +
        `  ${missed}, ${worst.name}${limits.length ? ` (limit ${limits.length > 3 ? 'by page' : limits.join(' or ')} ${worst.unit})` : ''}`,
    );
  }
}

/** How badly a page misses: its largest error in units of the limit. */
function badness(rows: readonly Judgement[]): number {
  return Math.max(
    ...rows.map((row) => (row.limit === null ? 0 : row.limit === 0 ? row.error * 2 : row.error / row.limit)),
  );
}

const wanted = process.argv.slice(2).filter((word) => !word.startsWith('-'));
const specs = SPECS.filter(({ name }) => wanted.length === 0 || wanted.some((part) => name.includes(part)));
const judged: JudgedPage[] = [];
const sizes = new Map<string, number>();
let worst: { page: MadePage; result: PageResult; badness: number } | null = null;
mkdirSync(OUT, { recursive: true });
for (const spec of specs) {
  const page = await makePage(spec);
  const start = performance.now();
  const result = measured(page);
  const one = { name: spec.name, rows: judgePage(page, result), ms: performance.now() - start };
  judged.push(one);
  printPage(one);
  const size = result.measures.find(({ code }) => code === 'x-height')?.value;
  if (typeof size === 'number') sizes.set(spec.name, size);
  const bad = badness(one.rows);
  if (!worst || bad > worst.badness) worst = { page, result, badness: bad };
}
const spread = resolutionSpread(sizes);
if (spread) judged.push({ name: 'dpi-all', rows: [spread], ms: 0 });
printTable(judged);
if (worst) {
  const { page, result } = worst;
  const png = await overlayPng(result, { width: page.width, height: page.height, data: page.gray });
  writeFileSync(`${OUT}worst-${page.spec.name}.png`, png);
  console.log(`\nThe worst page is drawn in out/accuracy/worst-${page.spec.name}.png.`);
}
const digits = wanted.length === 0 ? digitHolesReport() : { missed: 0, lines: [] };
for (const line of digits.lines) console.log(line);
writeFileSync(`${OUT}report.json`, JSON.stringify({ pages: judged, digits }, null, 1));
const missedPages = judged.filter(({ rows }) => rows.some(isMissed)).length;
console.log(`\n${judged.length - missedPages} pages keep every limit, ${missedPages} do not.`);
process.exitCode = missedPages > 0 || digits.missed > 0 ? 1 : 0;
