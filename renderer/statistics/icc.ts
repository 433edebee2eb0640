import { mean } from 'simple-statistics';

/** Mean squares of a table of subjects (rows) by raters or occasions (columns). */
export interface MeanSquares {
  subjects: number;
  between: number;
  /** Within subjects. */
  within: number;
  raters: number;
  error: number;
}

/** Intraclass correlations: model 1 to 3, one rating or the mean of all k. Null where there is no spread at all. */
export interface IccResult {
  meanSquares: MeanSquares;
  icc11: number | null;
  icc21: number | null;
  icc31: number | null;
  icc1k: number | null;
  icc2k: number | null;
  icc3k: number | null;
}

/**
 * Two-way analysis of variance of a full table.
 * @param table at least two rows of the same length, at least two columns
 * @throws RangeError for a table that is too small or has holes
 */
export function meanSquares(table: readonly (readonly number[])[]): MeanSquares {
  const n = table.length;
  const k = table[0]?.length ?? 0;
  if (n < 2 || k < 2 || table.some((row) => row.length !== k || row.some((v) => !Number.isFinite(v)))) {
    throw new RangeError('the table needs two full rows and two columns at least');
  }
  const grand = mean(table.flat());
  const rowMeans = table.map((row) => mean([...row]));
  const columnMeans = table[0]!.map((_, j) => mean(table.map((row) => row[j]!)));
  const squares = (values: number[]) => values.reduce((sum, v) => sum + (v - grand) ** 2, 0);
  const ssRows = k * squares(rowMeans);
  const ssColumns = n * squares(columnMeans);
  const ssTotal = squares(table.flat());
  const ssError = Math.max(0, ssTotal - ssRows - ssColumns);
  return {
    subjects: n,
    between: ssRows / (n - 1),
    within: (ssTotal - ssRows) / (n * (k - 1)),
    raters: ssColumns / (k - 1),
    error: ssError / ((n - 1) * (k - 1)),
  };
}

/**
 * Intraclass correlation: how much of the spread lies between subjects rather than between raters or by chance.
 * (1) other raters for each subject, (2) the same raters, drawn from many, (3) only these raters.
 * @param table subjects in rows, raters in columns
 * @throws RangeError for a table that is too small or has holes
 * Source: Shrout & Fleiss 1979, Psychological Bulletin 86:420-428.
 */
export function icc(table: readonly (readonly number[])[]): IccResult {
  const ms = meanSquares(table);
  const k = table[0]!.length;
  const { subjects: n, between: b, within: w, raters: j, error: e } = ms;
  const share = (part: number, whole: number) => (whole > 0 ? part / whole : null);
  return {
    meanSquares: ms,
    icc11: share(b - w, b + (k - 1) * w),
    icc21: share(b - e, b + (k - 1) * e + (k * (j - e)) / n),
    icc31: share(b - e, b + (k - 1) * e),
    icc1k: share(b - w, b),
    icc2k: share(b - e, b + (j - e) / n),
    icc3k: share(b - e, b),
  };
}
