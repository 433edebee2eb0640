/** Log likelihood of the level of a run of visits: before, or now. */
import { CELLS, EFFECTS, EFFECT_WEIGHTS, LEVELS, LOGITS, logistic, SPREADS } from './posterior/grid.ts';
import { visitTable } from './visit-table.ts';

const ROWS = SPREADS.length;

/** One visit as the model counts it. */
export interface PhaseVisit {
  /** A fraction where readers are averaged. */
  right: number;
  words: number;
  /** Who read it, where no reader is common to all visits: a group of its own leniency; null = no leniency. */
  group: string | null;
  readers: number;
}

/**
 * @param visits oldest first, at least one
 * @param decay weight of a visit for each visit after it, 0 to 1; 1 = all alike
 * @param readerSpread standard deviation of one reader's leniency, logit
 * @returns one row of levels for each spread, up to a constant
 */
export function phaseLikelihood(visits: readonly PhaseVisit[], decay: number, readerSpread: number): Float64Array {
  const groups = new Map<string | null, { log: Float64Array; readers: number }>();
  visits.forEach(({ right, words, group, readers }, k) => {
    const known = groups.get(group) ?? { log: new Float64Array(CELLS), readers };
    addVisit(known.log, visitTable(right, words), decay ** (visits.length - 1 - k));
    groups.set(group, known);
  });
  const all = new Float64Array(CELLS);
  const product = new Float64Array(CELLS).fill(1);
  for (const [group, { log, readers }] of groups) {
    if (group === null) addVisit(all, log, 1);
    else multiplyOverLeniency(product, all, log, readerSpread / Math.sqrt(readers));
  }
  for (let cell = 0; cell < CELLS; cell++) all[cell]! += Math.log(product[cell]!);
  return all;
}

/** Adds a visit's table with a weight, in place. */
export function addVisit(sum: Float64Array, table: Float64Array, weight: number): void {
  for (let cell = 0; cell < CELLS; cell++) sum[cell]! += weight * table[cell]!;
}

/** For each level a run of levels that lenient or strict readers see instead, with their weights, one after the other. */
interface Seen {
  /** First level of each run. */
  first: Int32Array;
  /** Where each run's weights begin; one more at the end. */
  start: Int32Array;
  weights: Float64Array;
}

/** Few spreads of leniency occur: that of one reader over the root of how many read together. */
const seenBySpread = new Map<number, Seen>();

/** Linear between levels, the ends held. Whole runs, gaps of weight 0 included: adding them up needs no look-up. */
function seenWith(spread: number): Seen {
  const known = seenBySpread.get(spread);
  if (known) return known;
  const first = new Int32Array(LEVELS);
  const start = new Int32Array(LEVELS + 1);
  const weights: number[] = [];
  LOGITS.forEach((logit, level) => {
    const run = new Map<number, number>();
    const add = (at: number, weight: number): void => void run.set(at, (run.get(at) ?? 0) + weight);
    EFFECTS.forEach((z, k) => {
      const place = Math.min(LEVELS - 1, Math.max(0, LEVELS * logistic(logit + spread * z) - 0.5));
      const below = Math.min(Math.floor(place), LEVELS - 2);
      add(below, EFFECT_WEIGHTS[k]! * (1 - (place - below)));
      add(below + 1, EFFECT_WEIGHTS[k]! * (place - below));
    });
    const from = Math.min(...run.keys());
    for (let at = from; at <= Math.max(...run.keys()); at++) weights.push(run.get(at) ?? 0);
    first[level] = from;
    start[level + 1] = weights.length;
  });
  const seen = { first, start, weights: Float64Array.from(weights) };
  if (seenBySpread.size > 50) seenBySpread.clear();
  seenBySpread.set(spread, seen);
  return seen;
}

/** A product below this is moved to its logarithm before it gets too small; one logarithm a group would cost most. */
const SMALL = 1e-150;
const LEAST = 1e-300;

/**
 * Multiplies by a group's likelihood averaged over what the readers' leniency may be.
 * @param product, sum together the joint likelihood: product times e to the sum; both are changed
 */
function multiplyOverLeniency(product: Float64Array, sum: Float64Array, log: Float64Array, spread: number): void {
  let top = -Infinity;
  for (let cell = 0; cell < CELLS; cell++) if (log[cell]! > top) top = log[cell]!;
  const { first, start, weights } = seenWith(spread);
  // Level by level with the spreads side by side: their sums need not wait for one another.
  const likely = new Float64Array(CELLS);
  for (let s = 0, cell = 0; s < ROWS; s++)
    for (let i = 0; i < LEVELS; i++, cell++) likely[i * ROWS + s] = Math.exp(log[cell]! - top);
  const means = new Float64Array(ROWS);
  for (let i = 0; i < LEVELS; i++) {
    means.fill(0);
    const end = start[i + 1]!;
    for (let at = start[i]!, place = first[i]! * ROWS; at < end; at++, place += ROWS) {
      const weight = weights[at]!;
      for (let s = 0; s < ROWS; s++) means[s]! += weight * likely[place + s]!;
    }
    for (let s = 0, cell = i; s < ROWS; s++, cell += LEVELS) {
      const mean = means[s]!;
      if (product[cell]! < SMALL || mean < SMALL) {
        sum[cell]! += Math.log(product[cell]!) + Math.log(Math.max(mean, LEAST));
        product[cell] = 1;
      } else product[cell]! *= mean;
      sum[cell]! += top;
    }
  }
}
