/**
 * Low-pass of pen positions: Butterworth of order 2, forward and backward, -3 dB at 12 Hz in all, for a grid of 200 Hz.
 * Each pass alone has -3 dB at 14.96 Hz (coefficients within 1e-5 of scipy.signal.butter); ends as scipy.signal.filtfilt
 * (odd reflection, steady-state start).
 */
export const GRID_MS = 5;
export const GRID_HZ = 1000 / GRID_MS;

/** Where one pass has -3 dB, Hz: the noise that gets through is reckoned from it. */
export const PASS_HZ = 14.96;

export const B = [0.041057064, 0.0821141281, 0.041057064] as const;
export const A = [1, -1.3506876859, 0.514915942] as const;

/** States of the filter that a constant 1 leaves unchanged. */
const Z1 = 1 - B[0];
const Z2 = B[2] - A[2];

/** Samples reflected at each end. */
const MOST_PADDING = 40;

function onePass(values: Float64Array): void {
  let z1 = Z1 * values[0]!;
  let z2 = Z2 * values[0]!;
  for (let i = 0; i < values.length; i += 1) {
    const x = values[i]!;
    const y = B[0] * x + z1;
    z1 = B[1] * x + z2 - A[1] * y;
    z2 = B[2] * x - A[2] * y;
    values[i] = y;
  }
}

/** The filtered values; the input stays as it is. */
export function lowPass(values: Float64Array): Float64Array {
  const n = values.length;
  if (n < 2) return values.slice();
  const pad = Math.min(MOST_PADDING, n - 1);
  const padded = new Float64Array(n + 2 * pad);
  const [first, last] = [values[0]!, values[n - 1]!];
  for (let i = 1; i <= pad; i += 1) {
    padded[pad - i] = 2 * first - values[i]!;
    padded[pad + n - 1 + i] = 2 * last - values[n - 1 - i]!;
  }
  padded.set(values, pad);
  onePass(padded);
  padded.reverse();
  onePass(padded);
  padded.reverse();
  return padded.slice(pad, pad + n);
}
