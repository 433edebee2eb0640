import { median } from '../../statistics/order-statistics.ts';
import type { InkQuality } from '../ink-types.ts';
import { GRID_HZ } from '../prepare/butterworth.ts';
import type { Noise } from '../prepare/noise.ts';
import { LIMITED } from '../quality.ts';
import type { InkCode, MeasureRows } from './measure-rows.ts';
import type { PenStroke } from './ink-strokes.ts';
import { turnToTurn, verticalSpeeds } from './ink-strokes.ts';
import { logDimensionlessJerk, sparc, squaredJerk } from './smoothness.ts';
import { logTrend } from './trends.ts';

/** What strokes tell; tasks without strokes tell none of it. */
export const STROKE_CODES: readonly InkCode[] = [
  'strokes',
  'stroke-height',
  'stroke-duration',
  'stroke-peak-speed',
  'stroke-height-cv',
  'velocity-peaks',
  'sparc',
  'ldlj',
  'size-decrement',
  'speed-decrement',
  'size-drift',
  'first-last-five',
  'power-law',
];

/** Strokes shorter than this have no smoothness, s. */
const SMOOTH_FROM_S = 0.2;
const PROMINENCE_SHARE = 0.1;
const PROMINENCE_MM_S = 3;
const PROMINENCE_NOISE = 5;
/** Noise above this share of the median peak hides peaks and arcs. */
const NOISE_SHARE = 0.25;
/** Below this many times the noise a speed is not reliable. */
const SPEED_OVER_NOISE = 30;
const JERK_SHARE = 0.5;
const ENDS = 5;

/** Local maxima that stand out by `prominence` on both sides (as scipy.signal.find_peaks). */
export function countPeaks(values: Float64Array, prominence: number): number {
  let count = 0;
  for (let i = 1; i < values.length - 1; i += 1) {
    if (!(values[i]! > values[i - 1]!)) continue;
    let end = i;
    while (end < values.length - 1 && values[end + 1] === values[i]) end += 1;
    if (end === values.length - 1 || values[end + 1]! > values[i]!) continue;
    let low = values[i]!;
    for (let k = i; k >= 0 && values[k]! <= values[i]!; k -= 1) low = Math.min(low, values[k]!);
    let other = values[i]!;
    for (let k = end; k < values.length && values[k]! <= values[i]!; k += 1) other = Math.min(other, values[k]!);
    if (values[i]! - Math.max(low, other) >= prominence) count += 1;
  }
  return count;
}

const meanOf = (values: readonly number[]): number => values.reduce((sum, each) => sum + each, 0) / values.length;

function deviation(values: readonly number[]): number {
  const mean = meanOf(values);
  return Math.sqrt(values.reduce((sum, each) => sum + (each - mean) ** 2, 0) / (values.length - 1));
}

function sizes(rows: MeasureRows, strokes: readonly PenStroke[]): void {
  const n = strokes.length;
  const heights = strokes.map(({ height }) => height);
  rows.set('strokes', n, n);
  rows.median('stroke-height', heights);
  rows.median(
    'stroke-duration',
    strokes.map(({ duration }) => duration),
  );
  rows.median(
    'stroke-peak-speed',
    strokes.map(({ peakSpeed }) => peakSpeed),
  );
  rows.set('stroke-height-cv', n < 2 ? null : (100 * deviation(heights)) / meanOf(heights), n);
  const numbers = strokes.map((_, i) => i);
  const speeds = strokes.map(({ meanSpeed }) => meanSpeed);
  rows.trend('size-decrement', logTrend(numbers, heights, 10), n);
  rows.trend('speed-decrement', logTrend(numbers, speeds, 10), n);
  const times = strokes.map(({ atS }) => atS);
  rows.trend('size-drift', logTrend(times, heights, 60), n);
  const [first, last] = [meanOf(heights.slice(0, ENDS)), meanOf(heights.slice(-ENDS))];
  rows.set('first-last-five', n < 2 * ENDS ? null : (100 * (first - last)) / first, n);
}

function smoothness(rows: MeasureRows, strokes: readonly PenStroke[], noise: Noise): void {
  const speeds = strokes.map(verticalSpeeds);
  const peaks = speeds.map((values, i) =>
    countPeaks(
      values,
      Math.max(PROMINENCE_SHARE * strokes[i]!.peakVy, PROMINENCE_MM_S, PROMINENCE_NOISE * noise.speed),
    ),
  );
  rows.set('velocity-peaks', peaks.length === 0 ? null : meanOf(peaks), peaks.length);
  const long = speeds.filter((values, i) => strokes[i]!.duration >= SMOOTH_FROM_S && values.length > 3);
  const arcs = long.map((values) => sparc(values, GRID_HZ)).filter((each) => each !== null);
  rows.median('sparc', arcs);
  // Jerk is taken of vy itself, from turn to turn: |vy| has a kink where vy changes its sign.
  const whole = strokes.filter(({ duration }) => duration >= SMOOTH_FROM_S).map(turnToTurn);
  const jerks = whole.map((values) => logDimensionlessJerk(values, GRID_HZ)).filter((each) => each !== null);
  rows.median('ldlj', jerks);
  const shares = whole.map((values) => (noise.jerkVariance * (values.length / GRID_HZ)) / squaredJerk(values, GRID_HZ));
  if (whole.length > 0 && !(median(shares)! <= JERK_SHARE)) rows.leave(['ldlj'], 'noise');
}

/** Fills the rows that strokes tell. @param noise null: the rate is too low to know it */
export function strokeRows(
  rows: MeasureRows,
  strokes: readonly PenStroke[],
  noise: Noise | null,
  quality: InkQuality,
): void {
  sizes(rows, strokes);
  if (quality.rateHz! < LIMITED.rateHz || !noise) return rows.leave(['velocity-peaks', 'sparc', 'ldlj'], 'rate');
  smoothness(rows, strokes, noise);
  const peak = median(strokes.map(({ peakVy }) => peakVy));
  if (peak === null) return;
  if (PROMINENCE_NOISE * noise.speed > NOISE_SHARE * peak) rows.leave(['velocity-peaks', 'sparc'], 'noise');
}

/** Whether speeds stand far enough above their noise to be relied on. */
export function speedsAreDoubtful(typicalPeak: number | null, noise: Noise | null): boolean {
  return noise !== null && typicalPeak !== null && typicalPeak < SPEED_OVER_NOISE * noise.speed;
}
