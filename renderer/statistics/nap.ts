/** How far the later values lie beyond the earlier ones. */
export interface NapResult {
  /** Pairs (earlier, later) where the later one is better, equal, worse. */
  better: number;
  tied: number;
  worse: number;
  /** Share of pairs that improved, ties counted half: 0.5 is chance, 1 no overlap. */
  nap: number;
  /** 2 * nap - 1, from -1 to 1. */
  tau: number;
}

/**
 * Nonoverlap of all pairs between a baseline and what followed.
 * @param higherIsBetter false where a smaller value is the better one
 * @returns null when a phase is empty
 * Source: Parker & Vannest 2009, Behavior Therapy 40:357-367.
 */
export function nap(baseline: readonly number[], later: readonly number[], higherIsBetter = true): NapResult | null {
  if (baseline.length === 0 || later.length === 0) return null;
  const direction = higherIsBetter ? 1 : -1;
  let better = 0;
  let tied = 0;
  let worse = 0;
  for (const before of baseline) {
    for (const after of later) {
      const sign = direction * Math.sign(after - before);
      if (sign > 0) better++;
      else if (sign < 0) worse++;
      else tied++;
    }
  }
  const share = (better + tied / 2) / (baseline.length * later.length);
  return { better, tied, worse, nap: share, tau: 2 * share - 1 };
}
