/**
 * Place of the highest peak of a smoothed histogram; null for an empty list.
 * @param low,high range looked at
 * @param bandwidth standard deviation of the smoothing, in the unit of the values
 */
export function modeOf(values: ArrayLike<number>, low: number, high: number, bandwidth: number): number | null {
  const density = densityCurve(values, low, high, bandwidth);
  if (!density) return null;
  const { curve, step } = density;
  let best = 0;
  for (let i = 1; i < curve.length; i += 1) if (curve[i]! > curve[best]!) best = i;
  if (curve[best]! <= 0) return null;
  return low + (best + parabola(curve, best)) * step;
}

/** The normal curve in steps of a sixteenth of a sample (a 64th of the bandwidth), out to three bandwidths. */
const FINE = 16;
const BELL = Float64Array.from({ length: 12 * FINE + FINE }, (_, i) => Math.exp(-0.5 * (i / FINE / 4) ** 2));

/** Room for the curve at hand. */
let room = new Float64Array(512);

/** Density of values between two limits, sampled at a quarter of the bandwidth. The curve is lent until the next call. */
export function densityCurve(
  values: ArrayLike<number>,
  low: number,
  high: number,
  bandwidth: number,
): { curve: Float64Array; step: number } | null {
  if (values.length === 0 || !(high > low) || !(bandwidth > 0)) return null;
  const step = bandwidth / 4;
  const samples = Math.ceil((high - low) / step) + 1;
  if (room.length < samples) room = new Float64Array(2 * samples);
  const curve = room.subarray(0, samples).fill(0);
  const reach = 12; // three bandwidths
  for (let i = 0; i < values.length; i += 1) {
    const at = (values[i]! - low) / step;
    if (at < -reach || at > curve.length + reach) continue;
    // From its middle to the right and to the left, in whole samples.
    const middle = Math.max(0, Math.min(curve.length, Math.ceil(at)));
    const right = Math.min(curve.length - 1, at + reach);
    for (let k = middle, b = Math.round((k - at) * FINE); k <= right; k += 1, b += FINE) curve[k]! += BELL[b]!;
    const left = Math.max(0, at - reach);
    for (let k = middle - 1, b = Math.round((at - k) * FINE); k >= left; k -= 1, b += FINE) curve[k]! += BELL[b]!;
  }
  return { curve, step };
}

/**
 * Sample of the lowest peak that is at least `share` as high as the highest and at least `apart` samples below it;
 * the highest itself where there is none.
 */
export function lowestPeak(curve: Float64Array, share: number, apart: number): number {
  let best = 0;
  for (let i = 1; i < curve.length; i += 1) if (curve[i]! > curve[best]!) best = i;
  for (let i = 1; i <= best - apart; i += 1)
    if (curve[i]! >= share * curve[best]! && curve[i]! >= curve[i - 1]! && curve[i]! > curve[i + 1]!) return i;
  return best;
}

/** Offset of a peak from its sample, by the parabola through its neighbors. */
function parabola(curve: ArrayLike<number>, at: number): number {
  if (at <= 0 || at >= curve.length - 1) return 0;
  const bend = curve[at - 1]! - 2 * curve[at]! + curve[at + 1]!;
  return bend === 0 ? 0 : (curve[at - 1]! - curve[at + 1]!) / (2 * bend);
}
