/** Measures in words: name, value with unit, and how it was read. */
import type { MeasureValue } from '../../db/types/sample.ts';

export const measureName = (code: string, names: readonly { code: string; name: string }[]): string =>
  names.find((m) => m.code === code)?.name ?? code.replaceAll('-', ' ');

/** Decrement is kept as a slope of ln(height); people think in percent from one word (or letter) to the next. */
const percentOfLn = (value: number): number => (Math.exp(value) - 1) * 100;

function number(value: number, unit: string): string {
  if (unit === 'count') return value.toFixed(0);
  if (unit === '%') return `${value.toFixed(1)} %`;
  if (unit === 'deg') return `${value.toFixed(1)}°`;
  if (unit === 'xh') return `${value.toFixed(2)} × letter height`;
  if (unit.startsWith('ln('))
    return `${percentOfLn(value).toFixed(2)} % a ${unit.endsWith('letter') ? 'letter' : 'word'}`;
  if (unit === '1') return value.toFixed(2);
  return `${value.toFixed(2)} ${unit}`;
}

export const showMeasure = (m: Pick<MeasureValue, 'value' | 'unit'>): string =>
  m.value === null ? 'unknown' : number(m.value, m.unit);

export function howMeasured(m: MeasureValue): string {
  const interval =
    m.low !== null && m.high !== null ? ` Interval (95 %) ${number(m.low, m.unit)} to ${number(m.high, m.unit)}.` : '';
  return `From ${m.n} readings.${interval} Method: ${m.method}.`;
}
