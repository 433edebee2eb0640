import type { LineResult } from '../types.ts';
import { median } from '../../statistics/order-statistics.ts';

/**
 * Letters of print stand on a straight line and are equally high. 37 pages of two people: scatter about the baseline 4 %
 * of the x-height and more, spread of height 3 % (lines of few letters) and more; four printed fonts: 1.5 and 1 %.
 */
const PRINT = { scatter: 0.025, spread: 0.04 } as const;
/** Fewer small letters say nothing. */
const LEAST_LETTERS = 8;
/** A page of nothing but even lines is called print up to this x-height, mm (13 points; common practice, no source). */
const PRINT_SIZE_MM = 2.45;
/** From normal deviations: standard deviation over median absolute deviation. */
const SD_OF_MAD = 1.4826;

/** Places (from 0) of lines that look printed. */
export function printedLines(lines: readonly LineResult[]): number[] {
  const read = lines.map((line) => ({ line, looks: looksOf(line) }));
  const printed = read.flatMap(({ looks }, i) => (looks === 'print' ? [i] : []));
  if (printed.length === 0) return [];
  if (read.some(({ looks }) => looks === 'hand')) return printed;
  const size = median(printed.map((i) => lines[i]!.xHeightMm ?? Infinity))!;
  return size <= PRINT_SIZE_MM ? printed : [];
}

function looksOf({ words, xHeightMm, baselineRmsMm }: LineResult): 'print' | 'hand' | null {
  const lns = words.flatMap((word) => (word.unevenMm ?? word.xHeightsMm).map(Math.log));
  if (lns.length < LEAST_LETTERS || xHeightMm === null || baselineRmsMm === null) return null;
  const middle = median(lns)!;
  const spread = SD_OF_MAD * median(lns.map((ln) => Math.abs(ln - middle)))!;
  const scatter = baselineRmsMm / xHeightMm;
  if (scatter < PRINT.scatter && spread < PRINT.spread) return 'print';
  return scatter > PRINT.scatter && spread > PRINT.spread ? 'hand' : null;
}
