/**
 * Measures of pages and of ink: how much a hand varies from page to page, and whether a difference is more than that.
 * The ruler's own interval of one page is two to five times narrower and says nothing about change.
 */
import { studentQuantile } from '../statistics/student-quantile.ts';
import type { ChangeLimits } from './change-limits.ts';
import type { Direction } from './change-types.ts';

type Limits = Pick<ChangeLimits, 'visitsApart' | 'knownPages' | 'handSure' | 'handRepeats' | 'decay'>;

/** Sizes and ratios vary in proportion and are compared as logarithms; angles, percentages and slopes as they are. */
export type HandScale = 'ratio' | 'difference';

/** @param unit of the measure, as in the table of measures */
export const handScaleOf = (unit: string): HandScale =>
  /^(deg|%|ln|count|points|grade)/.test(unit) ? 'difference' : 'ratio';

/** Standard deviation between visits on the measure's scale, and how well it is known. */
export interface HandSpread {
  sd: number;
  df: number;
  scale: HandScale;
}

/** What a difference between visits amounts to, on the measure's own unit. */
export interface HandChange {
  before: number;
  now: number;
  /** Difference or, on the ratio scale, now / before, with its interval. */
  amount: number;
  low: number;
  high: number;
  /** More than page-to-page noise; null when not. */
  beyond: Direction | null;
}

const onScale = (value: number, scale: HandScale): number => (scale === 'ratio' ? Math.log(value) : value);
const fromScale = (value: number, scale: HandScale): number => (scale === 'ratio' ? Math.exp(value) : value);
const fits = (value: number, scale: HandScale): boolean => Number.isFinite(value) && (scale !== 'ratio' || value > 0);
const meanOf = (values: readonly number[]): number => values.reduce((a, b) => a + b, 0) / values.length;

/**
 * Spread of a hand, what is known of other writers and the client's own repeats together.
 * Pages of one session resemble each other more than pages weeks apart: `visitsApart` makes up for it on both sides.
 * Without that factor on the client's own repeats an unchanged hand passed for changed in up to 7 of 100
 * (`npm run verdicts`).
 * @param known standard deviation between pages of ordinary writers, on the measure's scale; null = no figure
 * @param sessions values of the pages of each session; sessions of one page tell nothing
 * @returns null while nothing is known: no figure, and fewer repeats than `handRepeats`
 */
export function handSpread(
  known: number | null,
  sessions: readonly (readonly number[])[],
  scale: HandScale,
  limits: Limits,
): HandSpread | null {
  let squares = 0;
  let repeats = 0;
  for (const session of sessions) {
    const values = session.filter((value) => fits(value, scale)).map((value) => onScale(value, scale));
    if (values.length < 2) continue;
    const mean = meanOf(values);
    squares += values.reduce((sum, value) => sum + (value - mean) ** 2, 0);
    repeats += values.length - 1;
  }
  if (known === null && repeats < limits.handRepeats) return null;
  const knownDf = known === null ? 0 : limits.knownPages;
  const df = knownDf + repeats;
  const variance = (limits.visitsApart ** 2 * (knownDf * (known ?? 0) ** 2 + squares)) / df;
  return variance > 0 ? { sd: Math.sqrt(variance), df, scale } : null;
}

/** Where this hand usually lies, judged by one page: 95 of 100. @returns null where the scale does not hold the value */
export function handInterval(value: number, { sd, df, scale }: HandSpread): { low: number; high: number } | null {
  if (!fits(value, scale)) return null;
  const half = studentQuantile(0.975, df) * sd;
  const place = onScale(value, scale);
  return { low: fromScale(place - half, scale), high: fromScale(place + half, scale) };
}

/**
 * Whether a measure moved by more than the hand's own noise.
 * @param before, now one value a visit (the mean of its pages), comparable, oldest first; later visits count for more,
 *   as for words
 * @returns null where one side has no value
 */
export function handChange(
  before: readonly number[],
  now: readonly number[],
  spread: HandSpread,
  limits: Limits,
): HandChange | null {
  const { sd, df, scale } = spread;
  const place = (values: readonly number[]) =>
    values.filter((value) => fits(value, scale)).map((value) => onScale(value, scale));
  const [first, later] = [place(before), place(now)];
  if (first.length === 0 || later.length === 0) return null;
  const weights = later.map((_, i) => limits.decay ** (later.length - 1 - i));
  const all = weights.reduce((a, b) => a + b, 0);
  const atFirst = meanOf(first);
  const atLast = later.reduce((sum, value, i) => sum + weights[i]! * value, 0) / all;
  const share = weights.reduce((sum, weight) => sum + weight * weight, 0) / (all * all);
  const error = sd * Math.sqrt(1 / first.length + share);
  const half = studentQuantile(limits.handSure, df) * error;
  const moved = atLast - atFirst;
  return {
    before: fromScale(atFirst, scale),
    now: fromScale(atLast, scale),
    amount: fromScale(moved, scale),
    low: fromScale(moved - half, scale),
    high: fromScale(moved + half, scale),
    beyond: Math.abs(moved) <= half ? null : moved > 0 ? 'up' : 'down',
  };
}
