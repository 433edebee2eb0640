import type { Draws } from './bootstrap.ts';
import type { LineResult, PageResult, WordResult } from '../types.ts';
import { METHOD_VERSION } from '../version.ts';

/** What a measure is computed from: a page as read, with the therapist's corrections applied. */
export type ReadPage = Omit<PageResult, 'measures'>;

/** One value with what stands behind it. */
export interface Reading {
  value: number | null;
  n: number;
  low: number | null;
  high: number | null;
  spread: number | null;
}

/** One measure of a page. */
export interface Measure {
  code: string;
  /** Name in the words of the trade. */
  name: string;
  unit: string;
  /** Which way is better for most clients; 'none' where it depends on the goal. */
  direction: 'more' | 'less' | 'none';
  /** No value lies below it: no interval shown may either. */
  least?: number;
  /** Where definition and threshold come from. */
  source: string;
  /** How it is read, in a few words; part of the stored result. */
  how: string;
  /** @param draws pages resampled, for the interval */
  compute(page: ReadPage, draws: Draws): Reading;
}

export const NOTHING: Reading = { value: null, n: 0, low: null, high: null, spread: null };

/** Words that count. */
export function wordsIn(page: ReadPage): WordResult[] {
  return page.lines.flatMap((line) => wordsOfLine(line));
}

export function wordsOfLine(line: LineResult): WordResult[] {
  return line.words.filter((word) => !word.excluded);
}

/** Method label of a value: version and how it was read. */
export function methodOf(measure: Measure): string {
  return `${METHOD_VERSION}: ${measure.how}`;
}

/** A value rounded to six digits: more is noise, and results compare equal. Null for what is not a number. */
export function tidy(value: number | null): number | null {
  return value === null || !Number.isFinite(value) ? null : Number(value.toPrecision(6));
}
