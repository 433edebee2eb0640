import { median } from '../../statistics/order-statistics.ts';
import type { InkQuality, InkTask, InkTremor, TremorReason } from '../ink-types.ts';
import { GRID_HZ } from '../prepare/butterworth.ts';
import type { Motion } from '../prepare/motion.ts';
import type { MotionSpectrum } from './spectrum.ts';
import { spectrumOf } from './spectrum.ts';

/** Tasks in which a steady rhythm is not the writing itself: text beats at 2 to 6 Hz. */
export const TREMOR_TASKS: readonly InkTask[] = ['line', 'spiral', 'hold'];

const LEAST_CONTACT_S = 4;
const LEAST_WINDOWS = 3;
const LEAST_RATE_HZ = 50;
const PEAK_FROM_HZ = 3.15;
const PEAK_TO_HZ = 11.85;
const BAND = [3, 12] as const;
/** Half width of the peak, and where its flanks end, Hz. */
const NEAR_HZ = 1.5;
const FLANK_HZ = 3;
const CLEAR_RATIO = 6;
const CLEAR_SHARE = 0.4;
const LEAST_MM = 0.05;
const FLOOR = [15, 25] as const;

const none = (reason: TremorReason, windows = 0): InkTremor => ({
  frequencyHz: null,
  amplitudeRmsMm: null,
  bandPowerMm2: null,
  peakRatio: null,
  windows,
  reason,
});

/** Values at frequencies from `low` to `high`, both included; never the one at 0 Hz. */
function between(values: Float64Array, stepHz: number, low: number, high: number): Float64Array {
  const first = Math.max(1, Math.ceil(low / stepHz - 1e-9));
  return values.subarray(first, Math.max(first, Math.min(values.length, Math.floor(high / stepHz + 1e-9) + 1)));
}

const sum = (values: Float64Array): number => values.reduce((total, each) => total + each, 0);

interface Peak {
  index: number;
  frequencyHz: number;
}

/** Highest local maximum of the velocity spectrum, its place by a parabola through logarithms. */
function peakOf({ velocity, stepHz }: MotionSpectrum): Peak | null {
  let best = -1;
  for (let k = Math.ceil(PEAK_FROM_HZ / stepHz); k * stepHz <= PEAK_TO_HZ; k += 1) {
    const isTop = velocity[k]! > velocity[k - 1]! && velocity[k]! >= velocity[k + 1]!;
    if (isTop && (best < 0 || velocity[k]! > velocity[best]!)) best = k;
  }
  if (best < 0) return null;
  const [before, at, after] = [best - 1, best, best + 1].map((k) => Math.log(velocity[k]!)) as [number, number, number];
  const bend = before - 2 * at + after;
  const shift = bend < 0 && Number.isFinite(bend) ? (0.5 * (before - after)) / bend : 0;
  return { index: best, frequencyHz: (best + shift) * stepHz };
}

/** Medians of a spectrum beside the peak, 1.5 to 3 Hz to either side. */
function flanks(values: Float64Array, stepHz: number, f: number): { below: number; above: number } {
  const below = median(between(values, stepHz, f - FLANK_HZ, f - NEAR_HZ)) ?? 0;
  const above = median(between(values, stepHz, f + NEAR_HZ, f + FLANK_HZ)) ?? 0;
  return { below, above };
}

/** Rms of the place around the peak that rises above the background between its flanks, mm. */
function amplitude({ position, stepHz }: MotionSpectrum, f: number): number {
  const { below, above } = flanks(position, stepHz, f);
  const width = 2 * (NEAR_HZ + FLANK_HZ) * 0.5;
  const slope = below > 0 && above > 0 ? Math.log(above / below) / width : 0;
  let power = 0;
  const first = Math.ceil((f - NEAR_HZ) / stepHz);
  for (let k = Math.max(1, first); k * stepHz <= f + NEAR_HZ; k += 1) {
    const background = below * Math.exp(slope * (k * stepHz - (f - width / 2)));
    power += (position[k]! - background) * stepHz;
  }
  return Math.sqrt(Math.max(0, power));
}

/**
 * Rhythm of the hand in a line, a spiral or a held pen: its frequency and how far it swings.
 * Position spectra rise steeply to low frequencies, so the peak is sought in velocity.
 */
export function tremorOf(motions: readonly Motion[], task: InkTask, quality: InkQuality): InkTremor {
  if (!TREMOR_TASKS.includes(task)) return none('task');
  if (quality.rateHz === null) return none('no-time');
  const long = motions.filter(({ rawX }) => (rawX.length - 1) / GRID_HZ >= LEAST_CONTACT_S - 0.01);
  const spectrum = spectrumOf(long);
  if (!spectrum || spectrum.windows < LEAST_WINDOWS) return none('short', spectrum?.windows);
  const { windows, stepHz, velocity, position } = spectrum;
  if (quality.rateHz < LEAST_RATE_HZ) return none('rate', windows);
  if (quality.verdict === 'unusable') return none('quality', windows);
  if (!quality.calibrated) return none('no-scale', windows);

  const bandPowerMm2 = sum(between(position, stepHz, ...BAND)) * stepHz;
  const peak = peakOf(spectrum);
  if (!peak) return { ...none('no-clear-peak', windows), bandPowerMm2 };
  const f = peak.frequencyHz;
  const beside = flanks(velocity, stepHz, f);
  const mean = Math.sqrt(beside.below * beside.above);
  const peakRatio = mean > 0 ? velocity[peak.index]! / mean : null;
  const share =
    sum(between(velocity, stepHz, Math.max(BAND[0], f - NEAR_HZ), Math.min(BAND[1], f + NEAR_HZ))) /
    sum(between(velocity, stepHz, ...BAND));
  const told = { bandPowerMm2, peakRatio, windows, frequencyHz: null, amplitudeRmsMm: null };
  if ((peakRatio !== null && peakRatio < CLEAR_RATIO) || !(share >= CLEAR_SHARE))
    return { ...told, reason: 'no-clear-peak' };
  const amplitudeRmsMm = amplitude(spectrum, f);
  const floor = median(between(position, stepHz, FLOOR[0], Math.min(FLOOR[1], 0.4 * quality.rateHz))) ?? 0;
  if (amplitudeRmsMm < LEAST_MM || amplitudeRmsMm < 2 * Math.sqrt(3 * floor)) return { ...told, reason: 'below-noise' };
  return { ...told, frequencyHz: f, amplitudeRmsMm, reason: null };
}
