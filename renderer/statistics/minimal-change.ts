import { meanSquares } from './icc.ts';

/** How much two samples of an unchanged client differ. Unit: that of the measure. */
export interface MinimalChange {
  /** Standard error of measurement. */
  sem: number;
  /** Smallest change that 90 or 95 of 100 unchanged clients would not show. */
  mdc90: number;
  mdc95: number;
  pairs: number;
  /** Too few pairs: a poor estimate, to be labelled so. */
  provisional: boolean;
}

/**
 * Standard error of measurement and minimal detectable change from repeat samples (two of the same client, task and
 * readers with nothing changed between). A shift common to all second samples (practice) is taken out.
 * @param pairs at least two [first, second]; with one the error cannot be told from the shift
 * @param pairsSettled fewer pairs make the figure provisional
 * @returns null with fewer than two pairs
 * Source: Weir 2005, J Strength Cond Res 19:231-240 (SEM = square root of the error mean square).
 */
export function minimalChange(
  pairs: readonly (readonly [number, number])[],
  { pairsSettled }: { pairsSettled: number },
): MinimalChange | null {
  if (pairs.length < 2) return null;
  const sem = Math.sqrt(meanSquares(pairs).error);
  return {
    sem,
    mdc90: 1.645 * Math.SQRT2 * sem,
    mdc95: 1.96 * Math.SQRT2 * sem,
    pairs: pairs.length,
    provisional: pairs.length < pairsSettled,
  };
}
