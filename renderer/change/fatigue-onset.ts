/** The line from which words are lost for good within a bout of writing. */
import type { ChangeLimits } from './change-limits.ts';
import type { Count } from './change-types.ts';

export interface FatigueOnset {
  /** First line of the lasting fall, counted from 1; null when there is none, or too few lines. */
  onsetLine: number | null;
  /** Largest of the statistics of all lines, in standard errors; null with too few lines. */
  statistic: number | null;
}

const LINES_LEAST = 4;
const LINES_MOST = 10;
/** The fall is looked for from this line on: two lines must lie before it. */
const FIRST = 3;

/** What the statistic must reach for so many lines. */
function leastFor(lines: number, limits: ChangeLimits): number {
  const rows = [limits.onset4, limits.onset5, limits.onset6, limits.onset7, limits.onset8, limits.onset9];
  return rows[lines - LINES_LEAST] ?? limits.onset10;
}

/**
 * Onset of fatigue, the same lines of all bouts added.
 * @param bouts lines in the order written, each with at least one word; the shortest bout decides how many count
 */
export function fatigueOnset(bouts: readonly (readonly Count[])[], limits: ChangeLimits): FatigueOnset {
  const lines = Math.min(LINES_MOST, ...bouts.map((bout) => bout.length));
  if (bouts.length === 0 || lines < LINES_LEAST) return { onsetLine: null, statistic: null };
  const sum = (pick: keyof Count, from: number, to: number): number =>
    bouts.reduce((all, bout) => all + bout.slice(from, to).reduce((part, line) => part + line[pick], 0), 0);
  const p = (sum('right', 0, lines) + 1) / (sum('words', 0, lines) + 2);
  const q = p * (1 - p);
  let best = -Infinity;
  let onset = FIRST;
  for (let k = FIRST; k < lines; k++) {
    const [n, m] = [sum('words', 0, k - 1), sum('words', k - 1, lines)];
    const ofLines = ((q * limits.lineSpread) ** 2 / bouts.length) * (1 / (k - 1) + 1 / (lines - k + 1));
    const fall = sum('right', 0, k - 1) / n - sum('right', k - 1, lines) / m;
    const t = fall / Math.sqrt(q / n + q / m + ofLines);
    if (t > best) [best, onset] = [t, k];
  }
  return { onsetLine: best >= leastFor(lines, limits) ? onset : null, statistic: best };
}
