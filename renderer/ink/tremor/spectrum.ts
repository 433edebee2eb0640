import { GRID_HZ } from '../prepare/butterworth.ts';
import type { Motion } from '../prepare/motion.ts';
import { derivative } from '../prepare/motion.ts';
import { transform } from './fourier.ts';

/** Spectra of speed and place, x and y together, one value a step of frequency. */
export interface MotionSpectrum {
  /** Hz between two values. */
  stepHz: number;
  /** (mm/s)^2 per Hz. */
  velocity: Float64Array;
  /** mm^2 per Hz; the value at 0 Hz is 0. */
  position: Float64Array;
  windows: number;
}

/** Two seconds. */
const WINDOW = 2 * GRID_HZ;
const PADDED = 2048;

/** Periodic Hann window (Harris 1978). */
const HANN = Float64Array.from({ length: WINDOW }, (_, i) => 0.5 - 0.5 * Math.cos((2 * Math.PI * i) / WINDOW));
const POWER = HANN.reduce((sum, w) => sum + w * w, 0);

/** A stretch without its straight trend (least squares), times the window, padded with zeros. */
function windowed(values: Float64Array, from: number): Float64Array {
  const middle = (WINDOW - 1) / 2;
  let [sum, cross, square] = [0, 0, 0];
  for (let i = 0; i < WINDOW; i += 1) {
    sum += values[from + i]!;
    cross += (i - middle) * values[from + i]!;
    square += (i - middle) ** 2;
  }
  const [mean, slope] = [sum / WINDOW, cross / square];
  const out = new Float64Array(PADDED);
  for (let i = 0; i < WINDOW; i += 1) out[i] = (values[from + i]! - mean - slope * (i - middle)) * HANN[i]!;
  return out;
}

/**
 * Mean spectrum over two-second windows with half overlap (Welch 1967) of unfiltered velocity.
 * Position follows by dividing by what the central difference makes of a sine.
 * @returns null without a single window
 */
export function spectrumOf(motions: readonly Motion[]): MotionSpectrum | null {
  const half = PADDED / 2;
  const velocity = new Float64Array(half);
  let windows = 0;
  for (const { rawX, rawY } of motions) {
    const [vx, vy] = [derivative(rawX), derivative(rawY)];
    for (let from = 0; from + WINDOW <= vx.length; from += WINDOW / 2) {
      // Both axes in one transform: x real, y imaginary; the powers of a frequency and its mirror belong together.
      const [re, im] = [windowed(vx, from), windowed(vy, from)];
      transform(re, im);
      windows += 1;
      for (let k = 1; k < half; k += 1) {
        const mirror = PADDED - k;
        velocity[k]! += re[k]! ** 2 + im[k]! ** 2 + re[mirror]! ** 2 + im[mirror]! ** 2;
      }
    }
  }
  if (windows === 0) return null;
  const stepHz = GRID_HZ / PADDED;
  const position = new Float64Array(half);
  for (let k = 1; k < half; k += 1) {
    // |X|^2 + |Y|^2 of a frequency is half of the sum over it and its mirror; one-sided doubles it again.
    velocity[k]! /= GRID_HZ * POWER * windows;
    position[k] = velocity[k]! / (GRID_HZ * Math.sin(2 * Math.PI * ((k * stepHz) / GRID_HZ))) ** 2;
  }
  return { stepHz, velocity, position, windows };
}
