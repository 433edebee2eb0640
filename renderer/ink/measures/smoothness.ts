import { transform } from '../tremor/fourier.ts';

/**
 * Smoothness of one movement from its speed.
 * Source: Balasubramanian, Melendez-Calderon, Roby-Brami, Burdet 2015, J NeuroEng Rehabil 12:112, and the authors'
 * published code (padding, cut-off by frequency and by height).
 */

/** Above this nothing of a stroke is looked at, Hz. */
const CUT_OFF_HZ = 10;
/** Parts of the spectrum below this share of its height end the arc. */
const THRESHOLD = 0.05;
const PADDING = 4;

/**
 * Spectral arc length: -1.4 is one bell of speed, lower is less smooth.
 * @param speed evenly spaced, at least two values, any unit
 * @param cutOffHz for checks against published values; ours is 10
 * @returns null for a pen that stands still
 */
export function sparc(speed: Float64Array, rateHz: number, cutOffHz = CUT_OFF_HZ): number | null {
  const size = 2 ** (Math.ceil(Math.log2(speed.length)) + PADDING);
  const re = new Float64Array(size);
  re.set(speed);
  const im = new Float64Array(size);
  transform(re, im);
  const step = rateHz / size;
  const count = Math.min(Math.floor(cutOffHz / step + 1e-9) + 1, size);
  let top = 0;
  const height = new Float64Array(size);
  for (let k = 0; k < size; k += 1) {
    height[k] = Math.hypot(re[k]!, im[k]!);
    top = Math.max(top, height[k]!);
  }
  if (top === 0) return null;
  let [first, last] = [-1, -1];
  for (let k = 0; k < count; k += 1) {
    if (height[k]! / top < THRESHOLD) continue;
    if (first < 0) first = k;
    last = k;
  }
  if (last <= first) return null;
  const across = 1 / (last - first);
  let length = 0;
  for (let k = first + 1; k <= last; k += 1) length += Math.hypot(across, (height[k]! - height[k - 1]!) / top);
  return -length;
}

/** Integral of squared jerk over a movement, (unit/s^3)^2 s; the second differences of its speed. */
export function squaredJerk(speed: Float64Array, rateHz: number): number {
  let sum = 0;
  for (let i = 2; i < speed.length; i += 1)
    sum += ((speed[i]! - 2 * speed[i - 1]! + speed[i - 2]!) * rateHz * rateHz) ** 2;
  return sum / rateHz;
}

/** Dimensionless jerk: minus the squared jerk times T^3 over the squared peak. Null for a pen that stands still. */
export function dimensionlessJerk(speed: Float64Array, rateHz: number): number | null {
  const peak = speed.reduce((most, each) => Math.max(most, Math.abs(each)), 0);
  if (peak === 0 || speed.length < 3) return null;
  return (-squaredJerk(speed, rateHz) * (speed.length / rateHz) ** 3) / peak ** 2;
}

/** Log dimensionless jerk: higher (nearer to 0) is smoother. */
export function logDimensionlessJerk(speed: Float64Array, rateHz: number): number | null {
  const jerk = dimensionlessJerk(speed, rateHz);
  return jerk === null || jerk === 0 ? null : -Math.log(-jerk);
}
