/** Measures in words: name, value with unit, and how it was read. */
import type { MeasureValue } from '../../../../db/types/sample.ts';
import { METHOD_VERSION } from '../../../measure/index.ts';
import type { Told } from '../../texts/screens/en/screens-en.ts';
import type { Telling } from '../../texts/screens/telling.ts';

/** A measure that an older method knew keeps its code as its name. */
export function measureName(code: string, { names, otherNames }: Told['measures']): string {
  return names[code] ?? (otherNames as Readonly<Record<string, string>>)[code] ?? code.replaceAll('-', ' ');
}

/** Decrement is kept as a slope of ln(height); people think in percent from one word (or letter) to the next. */
const percentOfLn = (value: number): number => (Math.exp(value) - 1) * 100;

/** Less than this is no change, in percent or mm. */
const NO_CHANGE = 0.005;

interface Unit {
  decimals: number;
  /** The number with its unit. */
  of: (text: string) => string;
}

function unitOf(unit: string, { letterHeights }: Told['measures']): Unit {
  if (unit === 'count') return { decimals: 0, of: (text) => text };
  if (unit === '%') return { decimals: 1, of: (text) => `${text} %` };
  if (unit === 'deg') return { decimals: 1, of: (text) => `${text}°` };
  if (unit === 'xh') return { decimals: 2, of: letterHeights };
  return { decimals: 2, of: (text) => (unit === '1' ? text : `${text} ${unit}`) };
}

type Words = Told['measures'];

/** A measure told as how much and which way from one word, letter or line to the next: no sign has to be remembered. */
interface Course {
  per: keyof Words['per'];
  amount: (value: number) => number;
  unit: '%' | 'mm';
  /** Below zero, above zero. */
  ways: readonly [keyof Words['ways'], keyof Words['ways']];
}

const sizes = ['smaller', 'larger'] as const;

/** Change of size along lines or down the page, and where lines begin; null for other units. */
function courseOf(unit: string): Course | null {
  if (unit.startsWith('ln('))
    return { per: unit.endsWith('letter') ? 'letter' : 'word', amount: percentOfLn, unit: '%', ways: sizes };
  if (!unit.endsWith('per line')) return null;
  const perLine = { per: 'line', amount: (value: number) => value } as const;
  return unit.startsWith('mm')
    ? { ...perLine, unit: 'mm', ways: ['left', 'right'] }
    : { ...perLine, unit: '%', ways: sizes };
}

/** "4.16 % smaller", "0.33 mm to the left". */
function changeOf(value: number, course: Course, { told: { measures }, decimals }: Telling): string {
  const amount = course.amount(value);
  const [below, above] = course.ways;
  return measures.changeOf(
    `${decimals(Math.abs(amount), 2)} ${course.unit}`,
    measures.ways[amount < 0 ? below : above],
  );
}

function number(value: number, unit: string, telling: Telling): string {
  const words = telling.told.measures;
  const course = courseOf(unit);
  if (course) {
    const each = words.per[course.per];
    const small = Math.abs(course.amount(value)) < NO_CHANGE;
    return small ? words.noChange(each) : words.change(changeOf(value, course, telling), each);
  }
  const { decimals, of } = unitOf(unit, words);
  return of(telling.decimals(Math.abs(value) < NO_CHANGE ? 0 : value, decimals));
}

type Value = Pick<MeasureValue, 'value' | 'unit'>;

export const showMeasure = (m: Value, telling: Telling): string =>
  m.value === null ? telling.told.measures.unknown : number(m.value, m.unit, telling);

/** As `showMeasure`, on the screen of one page: what is said to shrink there shrinks on this page. */
export const showOnPage = (m: Value, telling: Telling): string =>
  m.value !== null && courseOf(m.unit)
    ? telling.told.measures.onThisPage(showMeasure(m, telling))
    : showMeasure(m, telling);

/** The unit once: "1.51 to 1.58 × letter height". */
function between(
  low: number | null | undefined,
  high: number | null | undefined,
  unit: string,
  telling: Telling,
): string | null {
  if (typeof low !== 'number' || typeof high !== 'number') return null;
  const words = telling.told.measures;
  const course = courseOf(unit);
  if (course) {
    const range = words.range(changeOf(low, course, telling), changeOf(high, course, telling));
    return words.change(range, words.per[course.per]);
  }
  const { decimals, of } = unitOf(unit, words);
  const shown = (value: number): string => telling.decimals(Math.abs(value) < NO_CHANGE ? 0 : value, decimals);
  return of(words.range(shown(low), shown(high)));
}

/** The two intervals of a measure by their plain names; null where one is not known. */
export const bothRanges = (m: MeasureValue, telling: Telling): { page: string | null; hand: string | null } => ({
  page: between(m.low, m.high, m.unit, telling),
  hand: between(m.handLow, m.handHigh, m.unit, telling),
});

function restsOn(pages: number | undefined, words: Told['measures']): string[] {
  if (pages === undefined) return [];
  return [pages > 0 ? words.handFromPages(pages) : words.handFromWriters];
}

/** How the engine of this version reads it, in the shown language; an older one in its own words. */
function methodWords({ code, method }: MeasureValue, words: Told['measures']): string {
  const [version = '', ...how] = method.split(': ');
  const said = version === METHOD_VERSION ? words.hows[code] : undefined;
  return words.method(version, said ?? how.join(': '));
}

export function howMeasured(m: MeasureValue, telling: Telling): string {
  const words = telling.told.measures;
  const { page, hand } = bothRanges(m, telling);
  return [
    words.readings(m.n),
    ...(page ? [words.pageRange(page)] : []),
    ...(hand ? [words.handRange(hand), ...restsOn(m.handPages, words)] : []),
    methodWords(m, words),
  ].join(' ');
}
