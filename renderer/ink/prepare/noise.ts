import { median } from '../../statistics/order-statistics.ts';
import { GRID_MS, PASS_HZ } from './butterworth.ts';
import type { Motion } from './motion.ts';

/** What the scatter of positions does to what is derived from them. */
export interface Noise {
  /** Standard deviation of a position along one axis, mm. */
  positionMm: number;
  /** Of a speed along one axis after the filter, mm/s. */
  speed: number;
  /** Variance of jerk after the filter, (mm/s^3)^2. */
  jerkVariance: number;
}

/** Share of the scatter of white noise that stays within the filter: 24.7 Hz wide at any rate of samples. */
const PASSED_HZ = 24.7;
const SPEED_FACTOR = 0.5554;
const JERK_FACTOR = 1.666;

function at(grid: Float64Array, position: number): number {
  const k = Math.min(Math.floor(position), grid.length - 2);
  return grid[k]! + (grid[k + 1]! - grid[k]!) * (position - k);
}

/** Scatter of the raw samples about the filtered path; null without motion or at a rate that the filter lets pass whole. */
export function noiseOf(motions: readonly Motion[], rateHz: number): Noise | null {
  if (motions.length === 0 || rateHz <= PASSED_HZ) return null;
  const size = motions.reduce((sum, { contact }) => sum + contact.t.length, 0);
  const residuals = new Float64Array(2 * size);
  let next = 0;
  for (const { contact, startMs, x, y } of motions) {
    for (let i = 0; i < contact.t.length; i += 1) {
      const position = (contact.t[i]! - startMs) / GRID_MS;
      residuals[next++] = Math.abs(contact.x[i]! - at(x, position));
      residuals[next++] = Math.abs(contact.y[i]! - at(y, position));
    }
  }
  const positionMm = (1.4826 * median(residuals)!) / Math.sqrt(1 - PASSED_HZ / rateHz);
  const f = PASS_HZ;
  return {
    positionMm,
    speed: 2 * Math.PI * positionMm * Math.sqrt((SPEED_FACTOR * f ** 3) / rateHz),
    jerkVariance: ((2 * Math.PI) ** 6 * positionMm ** 2 * JERK_FACTOR * f ** 7) / rateHz,
  };
}
