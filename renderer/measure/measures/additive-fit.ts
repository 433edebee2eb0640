import { solved } from '../normal-equations.ts';

/** One letter: its kind, line and word number, and ln of its height. */
export interface Row {
  kind: number;
  line: number;
  word: number;
  ln: number;
}

export interface AdditiveFit {
  /** ln by which each kind is taller than the others, mean 0 over the letters. */
  kinds: Float64Array;
  /** What the fit leaves of a letter. */
  rest(row: Row): number;
}

/** Keeps the equations solvable where kinds, lines and slope cannot be told apart; far too small to move a value. */
const RIDGE = 1e-7;

/**
 * Least squares of ln(height) = size of the line + slope x word + effect of the kind of letter, by the normal equations
 * (at most some hundred unknowns).
 */
export function additiveFit(rows: readonly Row[], kinds: number, lines: number): AdditiveFit {
  const n = kinds + lines + 1;
  const matrix = new Float64Array(n * n);
  const right = new Float64Array(n);
  for (const { kind, line, word, ln } of rows) {
    const at = [kind, kinds + line, n - 1];
    const by = [1, 1, word];
    for (let a = 0; a < 3; a += 1) {
      right[at[a]!] = right[at[a]!]! + by[a]! * ln;
      for (let b = 0; b < 3; b += 1) matrix[at[a]! * n + at[b]!] = matrix[at[a]! * n + at[b]!]! + by[a]! * by[b]!;
    }
  }
  for (let i = 0; i < n; i += 1) matrix[i * n + i] = matrix[i * n + i]! + RIDGE;
  const solution = solved(matrix, right, RIDGE * RIDGE);
  const effects = solution.slice(0, kinds);
  const mean = rows.reduce((sum, row) => sum + effects[row.kind]!, 0) / Math.max(1, rows.length);
  return {
    kinds: effects.map((effect) => effect - mean),
    rest: ({ kind, line, word, ln }) => ln - effects[kind]! - solution[kinds + line]! - solution[n - 1]! * word,
  };
}
