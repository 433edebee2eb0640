/** Agreement of two readers beyond chance. */
export interface KappaResult {
  /** Observed and chance agreement, 0 to 1. */
  observed: number;
  chance: number;
  /** 1 is perfect, 0 chance; null when both readers put everything in one class. */
  kappa: number | null;
  /** Standard error after Cohen 1960. */
  standardError: number | null;
  /** The largest kappa that the two readers' totals allow. */
  kappaMax: number | null;
}

/** Checks a square table of counts and returns it as proportions with its margins. */
export function proportions(table: readonly (readonly number[])[]): {
  n: number;
  cells: number[][];
  rows: number[];
  columns: number[];
} {
  const size = table.length;
  const n = table.flat().reduce((sum, count) => sum + count, 0);
  if (size < 2 || table.some((row) => row.length !== size || row.some((c) => !(c >= 0))) || !(n > 0)) {
    throw new RangeError('the table is square, with counts of 0 or more, and not empty');
  }
  const cells = table.map((row) => row.map((count) => count / n));
  const rows = cells.map((row) => row.reduce((sum, p) => sum + p, 0));
  const columns = cells[0]!.map((_, j) => cells.reduce((sum, row) => sum + row[j]!, 0));
  return { n, cells, rows, columns };
}

/**
 * Cohen's kappa of a square table of counts, one reader's classes in rows, the other's in columns.
 * It collapses when nearly everything falls in one class: show percent agreement and AC1 beside it.
 * @throws RangeError for a table that is not square, is empty or has negative counts
 * Source: Cohen 1960, Educational and Psychological Measurement 20:37-46.
 */
export function kappa(table: readonly (readonly number[])[]): KappaResult {
  const { n, cells, rows, columns } = proportions(table);
  const observed = cells.reduce((sum, row, i) => sum + row[i]!, 0);
  const chance = rows.reduce((sum, p, i) => sum + p * columns[i]!, 0);
  const most = rows.reduce((sum, p, i) => sum + Math.min(p, columns[i]!), 0);
  if (chance >= 1 - 1e-12) return { observed, chance, kappa: null, standardError: null, kappaMax: null };
  return {
    observed,
    chance,
    kappa: (observed - chance) / (1 - chance),
    standardError: Math.sqrt((observed * (1 - observed)) / (n * (1 - chance) ** 2)),
    kappaMax: (most - chance) / (1 - chance),
  };
}
