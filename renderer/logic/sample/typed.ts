import { mean, median, standardDeviation } from '../../statistics/order-statistics.ts';
/** The ruler path: typed readings in mm, with the same statistics as a scan gives. */

export interface TypedSummary {
  n: number;
  median: number;
  /** Standard deviation over mean, percent; null below 3 readings. */
  cv: number | null;
  /** Mean of the first five against the last five, percent smaller; null below 10 readings. */
  decrement: number | null;
}

/** Readings typed with spaces, commas between numbers, or one a line; a comma inside a number is a decimal comma. Null when one is not a number. */
export function parseReadings(typed: string): number[] | null {
  const parts =
    typed.trim() === ''
      ? []
      : typed
          .trim()
          .split(/[\s;]+|,\s+/)
          .filter(Boolean);
  const numbers = parts.map((p) => Number(p.replace(',', '.')));
  return numbers.every((n) => Number.isFinite(n)) ? numbers : null;
}

/** Readings in mm. A ruler reads to half a millimeter: ten letters bring a 2.5 mm letter within about 4 percent (computed). */
export function summarize(readings: readonly number[]): TypedSummary | null {
  if (readings.length === 0) return null;
  const values = [...readings];
  const first = values.slice(0, 5);
  const last = values.slice(-5);
  return {
    n: values.length,
    median: median(values)!,
    cv: values.length >= 3 && mean(values)! > 0 ? (standardDeviation(values)! / mean(values)!) * 100 : null,
    decrement: values.length >= 10 && mean(first)! > 0 ? ((mean(first)! - mean(last)!) / mean(first)!) * 100 : null,
  };
}

/** What can be measured with a ruler and typed, by code. */
export const ruled = ['x-height', 'word-gap-mm', 'letter-gap-mm', 'baseline-end-offset-mm'] as const;
