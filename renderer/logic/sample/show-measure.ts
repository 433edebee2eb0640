/** Measures in words: name, value with unit, and how it was read. */
import type { MeasureValue } from '../../../db/types/sample.ts';
import { MEASURES } from '../../measure/index.ts';
import { ruled } from './typed.ts';

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

export function howMeasured(m: MeasureValue): string {
  const interval =
    m.low !== null && m.high !== null ? ` Interval (95 %) ${number(m.low, m.unit)} to ${number(m.high, m.unit)}.` : '';
  return `From ${m.n} readings.${interval} Method: ${m.method}.`;
}
