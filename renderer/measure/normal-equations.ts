/**
 * Solves a symmetric positive definite system by Cholesky's decomposition (Golub and Van Loan, Matrix Computations,
 * from memory): normal equations. Changes its arguments.
 * @param a the matrix, row by row; @param b the right side
 * @param least of a pivot before its root is taken: keeps a system that is hardly definite from NaN
 */
export function solved(a: Float64Array, b: Float64Array, least: number): Float64Array {
  const n = b.length;
  for (let i = 0; i < n; i += 1)
    for (let j = 0; j <= i; j += 1) {
      let sum = a[i * n + j]!;
      for (let k = 0; k < j; k += 1) sum -= a[i * n + k]! * a[j * n + k]!;
      a[i * n + j] = i === j ? Math.sqrt(Math.max(sum, least)) : sum / a[j * n + j]!;
    }
  for (let i = 0; i < n; i += 1) {
    let sum = b[i]!;
    for (let k = 0; k < i; k += 1) sum -= a[i * n + k]! * b[k]!;
    b[i] = sum / a[i * n + i]!;
  }
  for (let i = n - 1; i >= 0; i -= 1) {
    let sum = b[i]!;
    for (let k = i + 1; k < n; k += 1) sum -= a[k * n + i]! * b[k]!;
    b[i] = sum / a[i * n + i]!;
  }
  return b;
}
