/**
 * `npm run accuracy [-- NAME …]`: every page of tests/measure/pages/specs.ts through the measuring engine. Prints each page's
 * errors and what differs from the snapshot of the method version, then worst and median of each quantity beside its
 * limit; leaves the worst page as a picture and the report as JSON in out/accuracy. Exit 1 when a limit is missed or a
 * value moved.
 * `npm run accuracy -- --pages FOLDER [--dpi N]`: pages that people wrote, against words counted by eye
 * (accuracy-pages.ts). They stay where they are.
 * `npm run accuracy -- --people N [--seed S]`: N pages like those that people write (accuracy-people.ts).
 * `npm run accuracy -- --sensitivity`: what each constant of the page model decides (accuracy-sensitivity.ts).
 * `npm run accuracy -- --held-out N [--seed S] [NAME …]`: N pages drawn by lot (tests/measure/pages/held-out.ts) instead.
 */
import { mkdirSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import { overlayPng } from '../../electron/files/measure/overlay-picture.ts';
import type { PageResult } from '../../renderer/measure/types.ts';
import { advice, differences, keptSnapshot, measureMadePage, snapshotOf } from '../../tests/measure/snapshot.ts';
import { makePage } from '../../tests/measure/pages/generate.ts';
import { heldOutSpecs } from '../../tests/measure/pages/held-out.ts';
import { isMissed, judgePage } from '../../tests/measure/pages/judge.ts';
import type { Judgement } from '../../tests/measure/pages/judge.ts';
import { SPECS } from '../../tests/measure/pages/specs.ts';
import type { MadePage, PageSpec } from '../../tests/measure/pages/types.ts';
import { digitHolesReport } from './accuracy-digits.ts';
import { judgeFolder } from './accuracy-pages.ts';
import { judgePeople } from './accuracy-people.ts';
import { judgeSensitivity } from './accuracy-sensitivity.ts';
import { median } from '../../renderer/statistics/order-statistics.ts';

const OUT = fileURLToPath(new URL('../../out/accuracy/', import.meta.url));

interface JudgedPage {
  name: string;
  rows: Judgement[];
  ms: number;
}

const shown = (value: number): string => (Number.isFinite(value) ? String(Number(value.toPrecision(3))) : '-');

function printPage({ name, rows, ms }: JudgedPage): void {
  const missed = rows.filter(isMissed);
  const facts = rows.map((row) => `${row.quantity} ${shown(row.error)}${row.unit}${isMissed(row) ? ' !' : ''}`);
  console.log(`${missed.length ? 'MISSED ' : 'ok     '}${name} (${Math.round(ms)} ms): ${facts.join(' · ')}`);
}

/** What a page drawn by lot is, in one line. */
function described({ writing: w, ruling, picture: p, ink, textGiven, paper }: PageSpec): string {
  const n = (value: number): string => String(Number(value.toPrecision(3)));
  const paperKind =
    ruling.kind === 'ruled'
      ? `ruled ${ruling.pitchMm}`
      : ruling.kind === 'squares'
        ? `squares ${ruling.sideMm}`
        : ruling.kind;
  return [
    `${w.font} ${n(w.xHeightMm)} mm (${n((w.xHeightMm * p.dpi) / 25.4)} px at ${p.dpi} dpi), pen ${n(w.penMm)} ${ink}`,
    `${paper} ${paperKind}, ${w.lines} x ${w.wordsPerLine} words every ${n(w.pitchMm)} mm${w.vocabulary === 'mixed' ? ', mixed' : ''}${textGiven ? ', text given' : ''}`,
    `gaps ${n(w.wordGapXh)} +- ${n(w.wordGapSdXh)}, letters ${w.letterGapXh === null ? 'own' : n(w.letterGapXh)}, slant ${n(w.slantDeg)} +- ${n(w.slantSdDeg)}`,
    `shrink ${n(w.lnPerWord)}, ${n(w.percentPerLine)} %, rise ${n(w.lineAngleDeg)} + ${n(w.lineAngleStepDeg)}, wave ${n(w.waveMm)}, open ${n(w.openShare)}`,
    `turn ${n(p.rotationDeg)}${p.tilt ? `, photo ${n(p.tilt.pitchDeg)} ${n(p.tilt.yawDeg)}` : ''}, blur ${n(p.blurPx)}, noise ${n(p.noise)}, shadow ${n(p.shadow)}, jpeg ${String(p.jpeg)}`,
  ].join('; ');
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
        shown(median(all.map((row) => row.error))!).padStart(10) +
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

const { values: asked, positionals: wanted } = parseArgs({
  allowPositionals: true,
  options: {
    'held-out': { type: 'string' },
    seed: { type: 'string', default: '1' },
    pages: { type: 'string' },
    people: { type: 'string' },
    sensitivity: { type: 'boolean', default: false },
    dpi: { type: 'string', default: '300' },
  },
});
if (asked.pages !== undefined) process.exit(await judgeFolder(asked.pages, Number(asked.dpi), wanted));
if (asked.people !== undefined) process.exit(await judgePeople(Number(asked.seed), Number(asked.people)));
if (asked.sensitivity) process.exit(await judgeSensitivity(wanted));
const lot = asked['held-out'];
const pages = lot === undefined ? SPECS : heldOutSpecs(Number(asked.seed), Number(lot));
const specs = pages.filter(({ name }) => wanted.length === 0 || wanted.some((part) => name.includes(part)));
const judged: JudgedPage[] = [];
const sizes = new Map<string, number>();
const kept = lot === undefined ? keptSnapshot() : null;
let moved = 0;
let worst: { page: MadePage; result: PageResult; badness: number } | null = null;
mkdirSync(OUT, { recursive: true });
for (const spec of specs) {
  const page = await makePage(spec);
  const start = performance.now();
  const result = measureMadePage(page);
  const one = { name: spec.name, rows: judgePage(page, result), ms: performance.now() - start };
  const said = result.warnings.map(({ code }) => code);
  if (said.length > 0) one.name += ` [${said.join(' ')}]`;
  judged.push(one);
  printPage(one);
  const changes = lot === undefined ? differences(kept?.[spec.name], snapshotOf(result)) : [];
  if (changes.length > 0) moved++;
  for (const change of changes) console.log(`       MOVED ${change}`);
  if (lot !== undefined && one.rows.some(isMissed)) console.log(`       ${described(spec)}`);
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
const digits = wanted.length === 0 && lot === undefined ? digitHolesReport() : { missed: 0, lines: [] };
for (const line of digits.lines) console.log(line);
writeFileSync(`${OUT}report.json`, JSON.stringify({ pages: judged, digits }, null, 1));
const missedPages = judged.filter(({ rows }) => rows.some(isMissed)).length;
console.log(`\n${judged.length - missedPages} pages keep every limit, ${missedPages} do not.`);
if (moved > 0) console.log(`${moved} pages differ from the snapshot. ${advice}`);
process.exitCode = moved > 0 || missedPages > 0 || digits.missed > 0 ? 1 : 0;
