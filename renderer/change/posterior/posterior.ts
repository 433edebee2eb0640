/** Joins both phases: what is now likely of the level before, the level now, their difference and the spread. */
import { CELLS, LEVELS, levelOf, SPREADS } from './grid.ts';

/** Cells of the difference: (k - (LEVELS - 1)) / LEVELS. */
const DIFFERENCES = 2 * LEVELS - 1;
const differenceOf = (k: number): number => (k - (LEVELS - 1)) / LEVELS;

/** Cells this much less likely than the top cell of their row add nothing that is seen. */
const NEGLIGIBLE = 1e-9;
const LOG_NEGLIGIBLE = Math.log(NEGLIGIBLE);

/** Chances that each add up to 1. */
export interface Posterior {
  /** Of now - before on the lattice k / LEVELS, `DIFFERENCES` cells. */
  change: Float64Array;
  before: Float64Array;
  now: Float64Array;
  spread: Float64Array;
}

/** Likelihood of a level, each spread's row relative to its own top: no row is lost for suiting one phase only. */
export interface Likelihood {
  rows: Float64Array;
  /** Log likelihood of each row's top. */
  tops: number[];
  /** Sum of each row. */
  sums: number[];
}

/** @param log from `phaseLikelihood` */
export function scaleRows(log: Float64Array): Likelihood {
  const rows = new Float64Array(CELLS);
  const tops: number[] = [];
  const sums: number[] = [];
  for (let s = 0; s < SPREADS.length; s++) {
    const [from, to] = [s * LEVELS, (s + 1) * LEVELS];
    let top = -Infinity;
    for (let cell = from; cell < to; cell++) if (log[cell]! > top) top = log[cell]!;
    let sum = 0;
    for (let cell = from; cell < to; cell++) {
      const below = log[cell]! - top;
      if (below < LOG_NEGLIGIBLE) continue;
      const value = Math.exp(below);
      rows[cell] = value;
      sum += value;
    }
    tops.push(top);
    sums.push(sum);
  }
  return { rows, tops, sums };
}

/** How much each spread counts once both phases are seen; 0 where it cannot be. */
function spreadWeights(before: Likelihood, now: Likelihood, prior: readonly number[]): number[] {
  const logs = prior.map((chance, s) => Math.log(chance) + before.tops[s]! + now.tops[s]!);
  const highest = Math.max(...logs);
  return logs.map((log) => {
    const weight = Math.exp(log - highest);
    return weight < NEGLIGIBLE * NEGLIGIBLE ? 0 : weight;
  });
}

/** The same in shares of their sum. */
function shares(values: Float64Array): Float64Array {
  let sum = 0;
  for (const value of values) sum += value;
  return values.map((value) => value / sum);
}

/**
 * Posterior of two phases that share the client's spread.
 * @param before, now from `scaleRows`
 * @param prior chances of the spreads
 */
export function posterior(before: Likelihood, now: Likelihood, prior: readonly number[]): Posterior {
  const change = new Float64Array(DIFFERENCES);
  const levelBefore = new Float64Array(LEVELS);
  const levelNow = new Float64Array(LEVELS);
  const spread = new Float64Array(SPREADS.length);
  spreadWeights(before, now, prior).forEach((weight, s) => {
    if (weight === 0) return;
    const rowBefore = before.rows.subarray(s * LEVELS, (s + 1) * LEVELS);
    const rowNow = now.rows.subarray(s * LEVELS, (s + 1) * LEVELS);
    spread[s] = weight * before.sums[s]! * now.sums[s]!;
    const first = rowNow.findIndex((value) => value > 0);
    const end = rowNow.findLastIndex((value) => value > 0) + 1;
    for (let i = 0; i < LEVELS; i++) {
      levelNow[i]! += weight * rowNow[i]! * before.sums[s]!;
      if (rowBefore[i] === 0) continue;
      const times = weight * rowBefore[i]!;
      levelBefore[i]! += times * now.sums[s]!;
      for (let j = first, at = LEVELS - 1 - i + first; j < end; j++, at++) change[at]! += times * rowNow[j]!;
    }
  });
  return { change: shares(change), before: shares(levelBefore), now: shares(levelNow), spread: shares(spread) };
}

/**
 * Chance that the change is above `x`, as `chanceAbove` of the whole posterior, without making the posterior: sums of
 * the levels below do for it, a hundredth of the work.
 * @param x a share, 0.1 = ten points
 */
export function chanceOfMore(before: Likelihood, now: Likelihood, prior: readonly number[], x = 0): number {
  const least = LEVELS * x - 0.5;
  const step = Math.ceil(least);
  const ofStep = step - least;
  let more = 0;
  let all = 0;
  spreadWeights(before, now, prior).forEach((weight, s) => {
    if (weight === 0) return;
    const from = s * LEVELS;
    let below = 0;
    let above = 0;
    for (let later = 0, level = 0; later < LEVELS; later++) {
      // Levels before that lie more than `step` under this one count whole, the one at `step` in part.
      const at = later - step;
      for (; level < at && level < LEVELS; level++) below += before.rows[from + level]!;
      const part = at >= 0 && at < LEVELS ? ofStep * before.rows[from + at]! : 0;
      above += now.rows[from + later]! * (below + part);
    }
    more += weight * above;
    all += weight * before.sums[s]! * now.sums[s]!;
  });
  return more / all;
}

/** Chance that the change is above `x` (a share, 0.1 = ten points); each cell is spread evenly over its width. */
export function chanceAbove(change: Float64Array, x: number): number {
  let sum = 0;
  for (let k = 0; k < DIFFERENCES; k++) {
    const high = differenceOf(k) + 0.5 / LEVELS;
    sum += change[k]! * Math.min(1, Math.max(0, (high - x) * LEVELS));
  }
  return Math.min(1, sum);
}

/** Place of the quantile in cells, from the first cell's middle. */
function quantileCell(chances: Float64Array, q: number): number {
  let below = 0;
  const last = chances.length - 1;
  for (let i = 0; i < last; i++) {
    const chance = chances[i]!;
    if (chance > 0 && below + chance >= q) return i - 0.5 + (q - below) / chance;
    below += chance;
  }
  return last - 0.5 + (chances[last]! > 0 ? Math.min(1, (q - below) / chances[last]!) : 1);
}

/** Quantile of the change, a share. */
export const changeQuantile = (change: Float64Array, q: number): number =>
  differenceOf(0) + quantileCell(change, q) / LEVELS;
/** Quantile of a level, a share. */
export const levelQuantile = (level: Float64Array, q: number): number => levelOf(0) + quantileCell(level, q) / LEVELS;
