/**
 * How much, how long, with which rests: from the line at which words are lost (`renderer/change`) and fatigue.
 * Design of the clinical notes, part H (common practice; no published algorithm).
 */

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
