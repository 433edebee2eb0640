import { densityCurve } from '../lines/density-peak.ts';

/** Gaps below this many x-heights are all the same to the classifier: letters that touch or overlap. */
const TOUCHING = 0.04;
/** Where no two kinds of gap can be told apart: common practice puts words about one letter width apart. */
const USUAL_CUT = 0.6;
/** The cut between letter and word gaps stays in this range, in x-heights. */
const LEAST_CUT = 0.3;
const LARGEST_CUT = 1.6;
/** Smoothing of ln(gap). */
const BANDWIDTH = 0.16;

/**
 * The gap that separates letters from words, in x-heights: two classes of ln(gap) by two means, then the emptiest place
 * between them.
 * @param gaps all gaps between neighboring letters of the page, in x-heights
 */
export function wordCut(gaps: readonly number[]): number {
  const logs = gaps.map((gap) => Math.log(Math.max(gap, TOUCHING)));
  if (logs.length < 4) return USUAL_CUT;
  let small = Math.log(0.15);
  let large = Math.log(1.4);
  for (let round = 0; round < 20; round += 1) {
    const middle = (small + large) / 2;
    const below = logs.filter((v) => v < middle);
    const above = logs.filter((v) => v >= middle);
    if (below.length === 0 || above.length === 0) return USUAL_CUT;
    const nextSmall = below.reduce((a, b) => a + b, 0) / below.length;
    const nextLarge = above.reduce((a, b) => a + b, 0) / above.length;
    if (Math.abs(nextSmall - small) + Math.abs(nextLarge - large) < 1e-6) break;
    small = nextSmall;
    large = nextLarge;
  }
  const low = Math.max(Math.log(LEAST_CUT), small);
  const high = Math.min(Math.log(LARGEST_CUT), large);
  if (high <= low) return USUAL_CUT;
  return Math.exp(emptiest(logs, low, high, (small + large) / 2));
}

/** Lowest density between two places; of empty places the one furthest from the gaps on both sides, in x-heights. */
function emptiest(logs: readonly number[], low: number, high: number, middle: number): number {
  const density = densityCurve(logs, low, high, BANDWIDTH);
  if (!density) return middle;
  const sorted = Float64Array.from(logs, Math.exp).sort();
  let best = middle;
  let least = Infinity;
  for (let i = 0; i < density.curve.length; i += 1) {
    const at = low + i * density.step;
    const cost = density.curve[i]! + 0.02 * Math.abs(at - middle) - CLEARANCE * clearance(sorted, Math.exp(at));
    if (cost < least) {
      least = cost;
      best = at;
    }
  }
  return best;
}

/** Half the way between the gaps on both sides counts as much as this share of one gap right there, per x-height. */
const CLEARANCE = 0.2;

/** Distance of a place to the nearest of some sorted gaps. */
function clearance(sorted: Float64Array, at: number): number {
  let low = 0;
  let high = sorted.length;
  while (low < high) {
    const k = (low + high) >> 1;
    if (sorted[k]! < at) low = k + 1;
    else high = k;
  }
  const below = low > 0 ? at - sorted[low - 1]! : Infinity;
  const above = low < sorted.length ? sorted[low]! - at : Infinity;
  return Math.min(below, above);
}
