import type { GrayImage } from '../types.ts';

/** Side of the window in pixels: about two letter heights at 300 dpi, so that paper always takes part. */
export const SAUVOLA_WINDOW = 51;
/** Weight of the contrast term; between the 0.2 and 0.5 of the literature, tried on pages of known geometry. */
export const SAUVOLA_K = 0.25;
/** Largest standard deviation of a byte image (Sauvola & Pietikäinen 2000). */
export const SAUVOLA_R = 128;

const WINDOW_AREA = SAUVOLA_WINDOW * SAUVOLA_WINDOW;
/** Share of the mean that a pixel of even paper must fall below: 1 - k. */
export const SAUVOLA_SHARE = 1 - SAUVOLA_K;
/** (k / R)^2 over the window's area squared: the weight of the spread where squares are compared. */
export const SAUVOLA_FACTOR = (SAUVOLA_K / SAUVOLA_R) ** 2 / (WINDOW_AREA * WINDOW_AREA);

/** Index of a row or column outside the picture, mirrored without repeating the edge itself. */
export function reflected(index: number, length: number): number {
  if (length === 1) return 0;
  const period = 2 * length - 2;
  const at = ((index % period) + period) % period;
  return at < length ? at : period - at;
}

/**
 * Ink by Sauvola's threshold: 1 where gray <= mean (1 + k (sd / R - 1)) in the window around the pixel, else 0.
 * Sauvola & Pietikäinen 2000, Pattern Recognition 33:225; running column sums instead of integral images
 * (memory of one row), and squares compared instead of roots. Both from memory.
 */
export function sauvola(image: GrayImage, ink = new Uint8Array(image.data.length)): Uint8Array {
  const { width, height, data } = image;
  const half = SAUVOLA_WINDOW >> 1;
  const n = WINDOW_AREA;
  const sums = new Int32Array(width);
  const squares = new Int32Array(width);
  const mirror = Int32Array.from({ length: width + 2 * half }, (_, i) => reflected(i - half, width));
  for (let dy = -half; dy <= half; dy += 1) addRow(data, reflected(dy, height) * width, width, sums, squares);
  // gray <= m (1 - k) + m k sd / R, both sides times n: a = n gray - (1 - k) S <= k S sd / R.
  const share = SAUVOLA_SHARE;
  const factor = SAUVOLA_FACTOR;
  for (let y = 0; y < height; y += 1) {
    if (y > 0) {
      const enters = reflected(y + half, height) * width;
      const leaves = reflected(y - half - 1, height) * width;
      if (enters !== leaves) swapRows(data, enters, leaves, width, sums, squares);
    }
    let sum = 0;
    let square = 0;
    for (let i = 0; i < SAUVOLA_WINDOW; i += 1) {
      sum += sums[mirror[i]!]!;
      square += squares[mirror[i]!]!;
    }
    const row = y * width;
    for (let x = 0; x < width; x += 1) {
      const above = n * data[row + x]! - share * sum;
      if (above <= 0) ink[row + x] = 1;
      else ink[row + x] = above * above <= factor * sum * sum * (n * square - sum * sum) ? 1 : 0;
      if (x + 1 < width) {
        const enter = mirror[x + SAUVOLA_WINDOW]!;
        const leave = mirror[x]!;
        sum += sums[enter]! - sums[leave]!;
        square += squares[enter]! - squares[leave]!;
      }
    }
  }
  return ink;
}

function addRow(data: Uint8Array, row: number, width: number, sums: Int32Array, squares: Int32Array): void {
  for (let x = 0; x < width; x += 1) {
    const g = data[row + x]!;
    sums[x] = sums[x]! + g;
    squares[x] = squares[x]! + g * g;
  }
}

function swapRows(
  data: Uint8Array,
  enters: number,
  leaves: number,
  width: number,
  sums: Int32Array,
  squares: Int32Array,
): void {
  for (let x = 0; x < width; x += 1) {
    const a = data[enters + x]!;
    const b = data[leaves + x]!;
    sums[x] = sums[x]! + a - b;
    squares[x] = squares[x]! + a * a - b * b;
  }
}
