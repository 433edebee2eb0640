/**
 * How many lines of one turn: from the line at which words are lost (`renderer/change`).
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
