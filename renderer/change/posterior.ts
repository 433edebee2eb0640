/** Joins both phases: what is now likely of the level before, the level now, their difference and the spread. */
import { LEVELS, levelOf, SPREADS } from './grid.ts';

/** Cells of the difference: (k - (LEVELS - 1)) / LEVELS. */
export const DIFFERENCES = 2 * LEVELS - 1;
const differenceOf = (k: number): number => (k - (LEVELS - 1)) / LEVELS;

/** Cells this much less likely than the top cell of their row add nothing that is seen. */
const NEGLIGIBLE = 1e-9;

/** Chances that each add up to 1. */
export interface Posterior {
  /** Of now - before on the lattice k / LEVELS, `DIFFERENCES` cells. */
  change: Float64Array;
  before: Float64Array;
  now: Float64Array;
  spread: Float64Array;
}

/** One spread's likelihoods: of the level before and now, each relative to its own top, and the row's weight. */
interface Row {
  s: number;
  before: Float64Array;
  now: Float64Array;
  weight: number;
}

function topOf(log: Float64Array, s: number): number {
  let top = -Infinity;
  for (let cell = s * LEVELS; cell < (s + 1) * LEVELS; cell++) if (log[cell]! > top) top = log[cell]!;
  return top;
}

function relative(log: Float64Array, s: number, top: number): Float64Array {
  const out = new Float64Array(LEVELS);
  for (let i = 0; i < LEVELS; i++) {
    const value = Math.exp(log[s * LEVELS + i]! - top);
    out[i] = value < NEGLIGIBLE ? 0 : value;
  }
  return out;
}

/** Each row has a scale of its own: a spread that suits one phase only must not leave the other without any cell. */
function rowsOf(logBefore: Float64Array, logNow: Float64Array, prior: readonly number[]): Row[] {
  const tops = prior.map((chance, s) => {
    const [before, now] = [topOf(logBefore, s), topOf(logNow, s)];
    return { s, before, now, log: Math.log(chance) + before + now };
  });
  const highest = Math.max(...tops.map(({ log }) => log));
  return tops.flatMap(({ s, before, now, log }) => {
    const weight = Math.exp(log - highest);
    if (weight < NEGLIGIBLE * NEGLIGIBLE) return [];
    return [{ s, before: relative(logBefore, s, before), now: relative(logNow, s, now), weight }];
  });
}

function total(values: Float64Array): number {
  let sum = 0;
  for (const value of values) sum += value;
  return sum;
}

function scaled(values: Float64Array): Float64Array {
  const sum = total(values);
  return values.map((value) => value / sum);
}

/**
 * Posterior of two phases that share the client's spread.
 * @param logBefore, logNow from `phaseLikelihood`
 * @param prior chances of the spreads
 */
export function posterior(logBefore: Float64Array, logNow: Float64Array, prior: readonly number[]): Posterior {
  const change = new Float64Array(DIFFERENCES);
  const before = new Float64Array(LEVELS);
  const now = new Float64Array(LEVELS);
  const spread = new Float64Array(SPREADS.length);
  for (const row of rowsOf(logBefore, logNow, prior)) {
    const [sumBefore, sumNow] = [total(row.before), total(row.now)];
    spread[row.s] = row.weight * sumBefore * sumNow;
    const first = row.now.findIndex((value) => value > 0);
    const end = row.now.findLastIndex((value) => value > 0) + 1;
    for (let i = 0; i < LEVELS; i++) {
      now[i]! += row.weight * row.now[i]! * sumBefore;
      if (row.before[i] === 0) continue;
      const times = row.weight * row.before[i]!;
      before[i]! += times * sumNow;
      for (let j = first, at = LEVELS - 1 - i + first; j < end; j++, at++) change[at]! += times * row.now[j]!;
    }
  }
  return { change: scaled(change), before: scaled(before), now: scaled(now), spread: scaled(spread) };
}

/** Chance that now lies above before, without the whole posterior: half of equal cells counts as above. */
export function chanceOfMore(logBefore: Float64Array, logNow: Float64Array, prior: readonly number[]): number {
  let more = 0;
  let all = 0;
  for (const { before, now, weight } of rowsOf(logBefore, logNow, prior)) {
    let below = 0;
    let above = 0;
    for (let i = 0; i < LEVELS; i++) {
      above += now[i]! * (below + before[i]! / 2);
      below += before[i]!;
    }
    more += weight * above;
    all += weight * below * total(now);
  }
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
