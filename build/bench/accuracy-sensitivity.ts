/**
 * `npm run accuracy -- --sensitivity [FILE …]`: what each constant of the page model decides. Every number of the named
 * files (the page model, unless others are given) is set to 0.7 and 1.3 times in a copy of the engine, and pages like
 * those that people write are measured with it, without the text and with it. They are read once, so constants of the
 * pixel stages show nothing here. Prints each ratio of the errors and, for the usual files, leaves them in
 * tests/measure/sensitivity.json.
 */
import { cpSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { readPage } from '../../renderer/measure/index.ts';
import type { ReadPage } from '../../renderer/measure/index.ts';
import type { MeasureOptions } from '../../renderer/measure/measure-options.ts';
import type { PageResult, Scale } from '../../renderer/measure/types.ts';
import { METHOD_VERSION } from '../../renderer/measure/version.ts';
import { makePage } from '../../tests/measure/pages/generate.ts';
import { peopleSpecs } from '../../tests/measure/pages/people-specs.ts';
import type { MadePage, PageSpec } from '../../tests/measure/pages/types.ts';
import { wordsIn } from './accuracy-pages.ts';

const ROOT = fileURLToPath(new URL('../../', import.meta.url));
const COPIES = `${ROOT}.cache/sensitivity/`;
const KEPT = `${ROOT}tests/measure/sensitivity.json`;
const USUAL = ['lines/page-model.ts'];
const FACTORS = [0.7, 1.3] as const;
/** Given by mathematics: nothing to choose. */
const MATHEMATICS = ['ROOT_2_PI'];
const [PAGES, SEED] = [6, 21];

type Measure = (read: ReadPage, options: MeasureOptions) => PageResult;

interface Place {
  name: string;
  file: string;
  from: number;
  to: number;
  value: number;
}

/** Every number in the constants at the top of a file, named by its constant and its key or place in it. */
function constantsOf(file: string): Place[] {
  const text = readFileSync(`${ROOT}renderer/measure/${file}`, 'utf8');
  const declared = /^(?:export )?const ([A-Z][A-Z0-9_]*)(?:: [^=]+)? = ([^;]+);/gm;
  return [...text.matchAll(declared)].flatMap((found): Place[] => {
    const [whole, name, right] = found as unknown as [string, string, string];
    if (MATHEMATICS.includes(name) || right.includes('=>')) return [];
    const start = found.index + whole.length - 1 - right.length;
    const numbers = [...right.matchAll(/(?:(\w+): )?(-?\b\d+(?:\.\d+)?\b)/g)].filter(
      ({ index }) => !right.slice(0, index).endsWith('** '),
    );
    const [counted, all] = [new Map<string, number>(), numbers.length];
    return numbers.map((number): Place => {
      const [matched, key, digits] = number as unknown as [string, string | undefined, string];
      const inside = key ?? '';
      const seen = counted.get(inside) ?? 0;
      counted.set(inside, seen + 1);
      const label = all === 1 ? name : `${name}.${key === undefined ? seen : key + (seen > 0 ? `.${seen}` : '')}`;
      const from = start + number.index + matched.length - digits.length;
      return { name: label, file, from, to: from + digits.length, value: Number(digits) };
    });
  });
}

/** The engine with one number changed, as a module of its own. */
async function engineWith(place: Place | null, value: number, n: number): Promise<Measure> {
  const copy = `${COPIES}${n}/`;
  for (const folder of ['measure', 'statistics'])
    cpSync(`${ROOT}renderer/${folder}`, `${copy}renderer/${folder}`, { recursive: true });
  if (place) {
    const file = `${copy}renderer/measure/${place.file}`;
    const text = readFileSync(file, 'utf8');
    writeFileSync(file, text.slice(0, place.from) + String(value) + text.slice(place.to));
  }
  const url = pathToFileURL(`${copy}renderer/measure/measure-page.ts`).href;
  return ((await import(url)) as { measureRead: Measure }).measureRead;
}

const QUANTITIES = ['height', 'heightWithText', 'unevenness', 'unevennessWithText', 'words'] as const;
type Errors = Record<(typeof QUANTITIES)[number], number>;

const scaleOf = ({ picture }: PageSpec): Scale => ({ pxPerMm: picture.dpi / 25.4, source: 'dpi' });

/** Mean absolute errors over the pages: height in percent, unevenness in points, words in percent. */
function errorsOf(measure: Measure, pages: readonly { read: ReadPage; page: MadePage }[]): Errors {
  const sums: Errors = { height: 0, heightWithText: 0, unevenness: 0, unevennessWithText: 0, words: 0 };
  for (const {
    read,
    page: { truth, spec },
  } of pages) {
    const scale = scaleOf(spec);
    const text = truth.lines.map(({ words }) => words.map((word) => word.text).join(' ')).join('\n');
    const [alone, laid] = [{}, { text }].map((more) => measure(read, { scale, ...more }));
    const valueOf = (result: PageResult, code: string): number =>
      result.measures.find((each) => each.code === code)?.value ?? 0;
    const words = truth.lines.reduce((sum, line) => sum + line.words.length, 0);
    const off = (result: PageResult): number => Math.abs(100 * (valueOf(result, 'x-height') / truth.xHeightMm - 1));
    const uneven = (result: PageResult): number =>
      Math.abs(valueOf(result, 'x-height-cv') - 100 * spec.people!.letterCv);
    sums.height += off(alone!) / pages.length;
    sums.heightWithText += off(laid!) / pages.length;
    sums.unevenness += uneven(alone!) / pages.length;
    sums.unevennessWithText += uneven(laid!) / pages.length;
    sums.words += (100 * Math.abs(wordsIn(alone!) - words)) / words / pages.length;
  }
  return sums;
}

const rounded = (value: number): number => Number(value.toFixed(3));
const rounding = (errors: Errors): Errors =>
  Object.fromEntries(QUANTITIES.map((each) => [each, rounded(errors[each])])) as Errors;

/** Prints a constant a line; answers the exit code. */
export async function judgeSensitivity(wanted: readonly string[]): Promise<number> {
  const places = (wanted.length > 0 ? wanted : USUAL).flatMap(constantsOf);
  const pages: { read: ReadPage; page: MadePage }[] = [];
  for (const spec of peopleSpecs(SEED, PAGES)) {
    const page = await makePage(spec);
    const { width, height, gray } = page;
    pages.push({ page, read: readPage({ width, height, data: gray }, { scale: scaleOf(spec) }) });
  }
  rmSync(COPIES, { recursive: true, force: true });
  mkdirSync(COPIES, { recursive: true });
  const usual = errorsOf(await engineWith(null, 0, 0), pages);
  console.log(`As it is: ${QUANTITIES.map((each) => `${each} ${usual[each].toFixed(2)}`).join(', ')}.`);
  console.log('Errors against these, with 0.7 and 1.3 times the constant:');
  const rows = [];
  for (const [i, place] of places.entries()) {
    const ratios: Errors[] = [];
    for (const [k, factor] of FACTORS.entries()) {
      const whole = Number.isInteger(place.value) && Math.abs(place.value) >= 4;
      const value = whole ? Math.round(place.value * factor) : Number((place.value * factor).toPrecision(6));
      const errors = errorsOf(await engineWith(place, value, 1 + 2 * i + k), pages);
      ratios.push(
        Object.fromEntries(QUANTITIES.map((each) => [each, errors[each] / Math.max(usual[each], 1e-9)])) as Errors,
      );
      rmSync(`${COPIES}${1 + 2 * i + k}`, { recursive: true, force: true });
    }
    const told = ratios.map((ratio) => QUANTITIES.map((each) => ratio[each].toFixed(2)).join(' ')).join('  |  ');
    console.log(`${place.name.padEnd(18)} ${String(place.value).padStart(6)}  ${told}`);
    const [low, high] = ratios.map(rounding);
    rows.push({ constant: place.name, file: place.file, value: place.value, at07: low, at13: high });
  }
  rmSync(COPIES, { recursive: true, force: true });
  if (wanted.length > 0) return 0;
  const head = {
    methodVersion: METHOD_VERSION,
    pages: `people, seed ${SEED}, ${PAGES} pages`,
    errors: rounding(usual),
  };
  writeFileSync(KEPT, `${JSON.stringify({ ...head, ratios: rows }, null, 2)}\n`);
  return 0;
}
