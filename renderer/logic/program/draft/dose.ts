import { median } from '../../../statistics/order-statistics.ts';

/**
 * How much, how long, with which rests: from line-by-line legibility (or size) and fatigue.
 * Design of the clinical notes, part H (common practice; no published algorithm).
 */

export interface LineQuality {
  /** Share of words read, 0 to 1, a line. */
  legibility?: readonly number[] | undefined;
  /** Middle-letter height, mm, a line; used where nobody read the lines. */
  sizesMm?: readonly number[] | undefined;
  /** Words of a line; a fall must then be two words at least, because one of eight is only noise. */
  wordsALine?: number | undefined;
}

function onsetIn(values: readonly number[], dropTo: number, leastDrop: number): number | null {
  const reference = median(values.slice(0, 2)) ?? 0;
  const limit = Math.min(dropTo * reference, reference - leastDrop + 1e-9);
  for (let i = 2; i + 1 < values.length; i += 1) {
    if ((values[i] ?? limit) < limit && (values[i + 1] ?? limit) < limit) return i + 1;
  }
  return null;
}

/**
 * First line, counted from 1 and not before the third, that lies with the line after it below `dropTo` times the
 * median of the first two lines. Null = no fall seen, or fewer than four lines.
 */
export function onsetLine(lines: LineQuality, dropTo = 0.9): number | null {
  const { legibility = [], sizesMm = [], wordsALine } = lines;
  const leastDrop = wordsALine === undefined ? 0 : 2 / wordsALine;
  if (legibility.length >= 4) return onsetIn(legibility, dropTo, leastDrop);
  return sizesMm.length >= 4 ? onsetIn(sizesMm, dropTo, 0) : null;
}

export interface BoutLimits {
  /** Share of the lines before the fall. */
  share: number;
  /** Longest bout, lines. */
  most: number;
}

/**
 * Lines of one bout: a share of the lines before the fall, at least one; without a fall, the lines tested, up to the
 * longest bout. Example: .95 .95 .92 .90 .84 .80 -> fall at line 5, bout of 3 lines.
 */
export function boutLines(onset: number | null, tested: number, limits: BoutLimits = { share: 0.8, most: 10 }): number {
  const lines = onset === null ? tested : Math.floor(limits.share * (onset - 1));
  return Math.min(limits.most, Math.max(1, lines));
}

/** Rest between bouts, minutes: one to two bout times, never under the shortest rest. */
export function restMinutes(boutMinutes: number, shortest = 2): { min: number; max: number } {
  return { min: Math.max(shortest, boutMinutes), max: Math.max(shortest, 2 * boutMinutes) };
}

/** Resume when fatigue has come back to within one point of the start. */
export const mayResume = (fatigueAtStart: number, fatigueNow: number): boolean => fatigueNow <= fatigueAtStart + 1;

export interface Bout {
  /** Words read of words written, line by line. */
  lines: { right: number; of: number }[];
  sizesMm: number[];
}

/**
 * Why the day's writing ends, or null to go on. Two lines running that are at least two words worse than the bout's
 * first (one word of eight is only noise), a loss of size of 10 %, three bouts, or fatigue, pain or tone that rises.
 */
export function stopForToday(
  bouts: readonly Bout[],
  now: { fatigueRise: number; painRise: number; toneRises: boolean },
  mostBouts = 3,
): string | null {
  if (now.painRise >= 2) return 'Pain rose by 2 or more.';
  if (now.fatigueRise >= 3) return 'Fatigue rose by 3 or more.';
  if (now.toneRises) return 'Tone rises.';
  const last = bouts.at(-1);
  const first = last?.lines[0];
  if (last && first) {
    const worse = last.lines.map(({ right, of }) => first.right / first.of - right / of >= 2 / of - 1e-9);
    if (worse.some((each, i) => each && worse[i + 1] === true)) return 'Two lines running were two words worse.';
  }
  const [start, end] = [last?.sizesMm[0], last?.sizesMm.at(-1)];
  if (start !== undefined && end !== undefined && end <= 0.9 * start) return 'Letters became a tenth smaller.';
  return bouts.length >= mostBouts ? `${mostBouts} bouts are enough for one day.` : null;
}
