import { proportions } from './kappa.ts';

/** Agreement where some disagreements are worse than others. */
export interface WeightedKappaResult {
  /** Mean weighted disagreement, observed and by chance. */
  observed: number;
  chance: number;
  kappa: number | null;
}

/** Disagreement weights for ordered classes, 0 to (size-1) or its square. */
export function orderedWeights(size: number, kind: 'linear' | 'quadratic'): number[][] {
  return Array.from({ length: size }, (_, i) =>
    Array.from({ length: size }, (_, j) => (kind === 'linear' ? Math.abs(i - j) : (i - j) ** 2)),
  );
}

/**
 * Weighted kappa: 1 - observed / chance disagreement.
 * @param weights disagreement weights, 0 on the diagonal; name them wherever the figure is shown
 * @throws RangeError when table and weights do not fit
 * Source: Cohen 1968, Psychological Bulletin 70:213-220.
 */
export function weightedKappa(
  table: readonly (readonly number[])[],
  weights: readonly (readonly number[])[],
): WeightedKappaResult {
  const { cells, rows, columns } = proportions(table);
  if (weights.length !== cells.length || weights.some((row) => row.length !== cells.length)) {
    throw new RangeError('the weights need the size of the table');
  }
  let observed = 0;
  let chance = 0;
  weights.forEach((row, i) =>
    row.forEach((weight, j) => {
      observed += weight * cells[i]![j]!;
      chance += weight * rows[i]! * columns[j]!;
    }),
  );
  return { observed, chance, kappa: chance > 0 ? 1 - observed / chance : null };
}
