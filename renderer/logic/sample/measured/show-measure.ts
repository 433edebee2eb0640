/** Measures in words: name, value with unit, and how it was read. */
import type { MeasureValue } from '../../../../db/types/sample.ts';
import { MEASURES } from '../../../measure/index.ts';
import { ruled } from '../typed.ts';

const named = new Map<string, string>([
  ...ruled.map((m) => [m.code, m.name.replace(/, mm$/, '')] as const),
  ...MEASURES.map((m) => [m.code, m.name] as const),
  ['x-height-before', 'Height of small letters before'],
  ['x-height-goal', 'Height of small letters aimed at'],
]);

/** A measure that an older method knew keeps its code as its name. */
export const measureName = (code: string): string => named.get(code) ?? code.replaceAll('-', ' ');

/** Decrement is kept as a slope of ln(height); people think in percent from one word (or letter) to the next. */
const percentOfLn = (value: number): number => (Math.exp(value) - 1) * 100;

/** Shrinking is negative: said in words, so that no sign has to be remembered. */
const change = (percent: number, per: string): string =>
  Math.abs(percent) < 0.005
    ? `no change a ${per}`
    : `${Math.abs(percent).toFixed(2)} % ${percent < 0 ? 'smaller' : 'larger'} each ${per}`;

function number(value: number, unit: string): string {
  if (unit === 'count') return value.toFixed(0);
  if (unit === '%') return `${value.toFixed(1)} %`;
  if (unit === 'deg') return `${value.toFixed(1)}°`;
  if (unit === 'xh') return `${value.toFixed(2)} × letter height`;
  if (unit.startsWith('ln(')) return change(percentOfLn(value), unit.endsWith('letter') ? 'letter' : 'word');
  if (unit === '% per line') return change(value, 'line');
  if (unit === '1') return value.toFixed(2);
  return `${(Math.abs(value) < 0.005 ? 0 : value).toFixed(2)} ${unit}`;
}

export const showMeasure = (m: Pick<MeasureValue, 'value' | 'unit'>): string =>
  m.value === null ? 'unknown' : number(m.value, m.unit);

/** Change of size along lines or down the page: one page tells of itself only. */
const isCourse = (unit: string): boolean => unit.startsWith('ln(') || unit === '% per line';

/** As `showMeasure`, on the screen of one page: what is said to shrink there shrinks on this page. */
export const showOnPage = (m: Pick<MeasureValue, 'value' | 'unit'>): string =>
  m.value !== null && isCourse(m.unit) ? `${showMeasure(m)}, on this page` : showMeasure(m);

const between = (low: number | null | undefined, high: number | null | undefined, unit: string): string | null =>
  typeof low === 'number' && typeof high === 'number' ? `${number(low, unit)} to ${number(high, unit)}` : null;

/** The two intervals of a measure by their plain names; null where one is not known. */
export const bothRanges = (m: MeasureValue): { page: string | null; hand: string | null } => ({
  page: between(m.low, m.high, m.unit),
  hand: between(m.handLow, m.handHigh, m.unit),
});

/** What the two ranges mean, in the words of the window. */
export const RANGE_WORDS = {
  page: 'This page: how exactly this page was read (95 %).',
  hand: 'This hand: where 95 of 100 pages of an unchanged hand would lie. Less than that apart is no change.',
} as const;

function restsOn(pages: number | undefined): string {
  if (pages === undefined) return '';
  return pages > 0
    ? ` This hand: from ${pages} pages repeated on one day, and from what ordinary writers vary.`
    : ' This hand: from what ordinary writers vary from page to page (two writers); repeat a page on one day to learn what this client varies.';
}

export function howMeasured(m: MeasureValue): string {
  const { page, hand } = bothRanges(m);
  const ranges = `${page ? ` This page (95 %): ${page}.` : ''}${hand ? ` This hand, page to page: ${hand}.${restsOn(m.handPages)}` : ''}`;
  return `From ${m.n} readings.${ranges} Method: ${m.method}.`;
}
