import { kendall } from './kendall.ts';
import { nap } from './nap.ts';
import { theilSen } from './theil-sen.ts';

/** Change between two phases, without and with the trend that the baseline already had. */
export interface TauUResult {
  /** Nonoverlap of the phases, -1 to 1. */
  tau: number;
  /** Nonoverlap less the baseline's own trend; misleads with a steep baseline or a short one: show tau beside it. */
  tauU: number;
}

/**
 * Tau-U: (S between phases - S within the baseline) / (pairs between phases).
 * @returns null when a phase is empty
 * Source: Parker, Vannest, Davis & Sauber 2011 (from memory); its weakness: Tarlow 2017.
 */
export function tauU(baseline: readonly number[], later: readonly number[]): TauUResult | null {
  const between = nap(baseline, later);
  if (!between) return null;
  const pairs = baseline.length * later.length;
  const within = kendall(
    baseline.map((_, i) => i),
    baseline,
  ).s;
  return { tau: between.tau, tauU: (between.better - between.worse - within) / pairs };
}

/** Change between two phases after the baseline's line was taken out, where it had one. */
export interface CorrectedTauResult {
  /** Nonoverlap of the values that were compared, -1 to 1. */
  tau: number;
  /** Kendall's tau-b of the values with the phase (0, 1); null when all values are equal. */
  tauB: number | null;
  /** Whether the baseline's trend was taken out. */
  corrected: boolean;
  /** The baseline slope per visit that was taken out, 0 when none was. */
  slopePerVisit: number;
}

/**
 * Baseline-corrected tau: a baseline whose trend chance explains in fewer than 1 of 20 cases is first
 * straightened by its Theil-Sen line, over both phases, then the phases are compared.
 * @returns null when a phase is empty
 * Source: Tarlow 2017 (journal from memory: Behavior Modification 41:427-467).
 */
export function baselineCorrectedTau(
  baseline: readonly number[],
  later: readonly number[],
  alpha = 0.05,
): CorrectedTauResult | null {
  if (baseline.length === 0 || later.length === 0) return null;
  const order = baseline.map((_, i) => i);
  const trend = kendall(order, baseline);
  const line = theilSen(order, baseline);
  const corrected = line !== null && trend.p !== null && trend.p < alpha;
  const slope = corrected ? line.slope : 0;
  const straight = [...baseline, ...later].map((value, i) => round12(value - slope * i));
  const phase = straight.map((_, i) => (i < baseline.length ? 0 : 1));
  const compared = nap(straight.slice(0, baseline.length), straight.slice(baseline.length))!;
  return { tau: compared.tau, tauB: kendall(phase, straight).tauB, corrected, slopePerVisit: slope };
}

// Rounding keeps equal residuals equal: 0.1 * 3 must not differ from 0.3.
const round12 = (value: number): number => Math.round(value * 1e12) / 1e12;
