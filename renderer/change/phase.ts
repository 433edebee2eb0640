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

/** A run of visits that grows. */
export interface Phase {
  /** Weight of a visit for each visit after it, 0 to 1; 1 = all alike. */
  decay: number;
  visits: number;
  /** Log likelihood of each group, up to a constant, as of its own last visit. */
  groups: Map<string | null, { log: Float64Array; last: number; readers: number }>;
}

/** @param visits oldest first */
export function phaseOf(visits: readonly PhaseVisit[], decay: number): Phase {
  const phase: Phase = { decay, visits: 0, groups: new Map() };
  for (const visit of visits) addVisit(phase, visit);
  return phase;
}

/** Adds the latest visit, in place. */
export function addVisit(phase: Phase, { right, words, group, readers }: PhaseVisit): void {
  const table = visitTable(right, words);
  const known = phase.groups.get(group);
  phase.visits += 1;
  if (!known) {
    phase.groups.set(group, { log: table.slice(), last: phase.visits, readers });
    return;
  }
  const { log } = known;
  const kept = phase.decay ** (phase.visits - known.last);
  for (let cell = 0; cell < CELLS; cell++) log[cell] = kept * log[cell]! + table[cell]!;
  known.last = phase.visits;
}

/**
 * @param phase of at least one visit
 * @param readerSpread standard deviation of one reader's leniency, logit
 * @returns log likelihood of the level, one row of levels for each spread, up to a constant
 */
export function phaseLikelihood({ decay, visits, groups }: Phase, readerSpread: number): Float64Array {
  const all = new Float64Array(CELLS);
  const product = new Float64Array(CELLS).fill(1);
  let lenient = false;
  for (const [group, { log, last, readers }] of groups) {
    const kept = decay ** (visits - last);
    if (group === null) for (let cell = 0; cell < CELLS; cell++) all[cell]! += kept * log[cell]!;
    else {
      multiplyOverLeniency(product, all, log, kept, readerSpread / Math.sqrt(readers));
      lenient = true;
    }
  }
  if (lenient) for (let cell = 0; cell < CELLS; cell++) all[cell]! += Math.log(product[cell]!);
  return all;
}

/** For each level those that lenient or strict readers see instead, lowest first, with their weights. */
interface Seen {
  /** Where what is seen of each level begins; one more at the end. */
  start: Int32Array;
  /** Where each level seen begins in a table of levels with the spreads side by side. */
  places: Int32Array;
  weights: Float64Array;
}

/** Few spreads of leniency occur: that of one reader over the root of how many read together. */
const seenBySpread = new Map<number, Seen>();

/** Linear between levels, the ends held. */
function seenWith(spread: number): Seen {
  const known = seenBySpread.get(spread);
  if (known) return known;
  const start = new Int32Array(LEVELS + 1);
  const places: number[] = [];
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
    for (const [at, weight] of [...run].sort(([a], [b]) => a - b)) {
      if (weight === 0) continue;
      places.push(at * ROWS);
      weights.push(weight);
    }
    start[level + 1] = weights.length;
  });
  const seen = { start, places: Int32Array.from(places), weights: Float64Array.from(weights) };
  if (seenBySpread.size > 50) seenBySpread.clear();
  seenBySpread.set(spread, seen);
  return seen;
}

/** A product below this is moved to its logarithm before it gets too small; one logarithm a group would cost most. */
const SMALL = 1e-150;
const LEAST = 1e-300;

/** Room for one group at a time: a verdict asks for some fifty, and the collector would run for their arrays. */
const likely = new Float64Array(CELLS);
const means = new Float64Array(ROWS);

/**
 * Multiplies by a group's likelihood averaged over what the readers' leniency may be.
 * @param product, sum together the joint likelihood: product times e to the sum; both are changed
 * @param kept weight of the group's log likelihood
 */
function multiplyOverLeniency(
  product: Float64Array,
  sum: Float64Array,
  log: Float64Array,
  kept: number,
  spread: number,
): void {
  let top = -Infinity;
  for (let cell = 0; cell < CELLS; cell++) if (log[cell]! > top) top = log[cell]!;
  const { start, places, weights } = seenWith(spread);
  // Level by level with the spreads side by side: their sums need not wait for one another.
  for (let s = 0, cell = 0; s < ROWS; s++)
    for (let at = s; at < CELLS; at += ROWS, cell++) likely[at] = Math.exp(kept * (log[cell]! - top));
  for (let i = 0; i < LEVELS; i++) {
    const end = start[i + 1]!;
    let [a, b, c, d, e, f, g, h] = [0, 0, 0, 0, 0, 0, 0, 0];
    for (let at = start[i]!; at < end; at++) {
      const place = places[at]!;
      const weight = weights[at]!;
      a += weight * likely[place]!;
      b += weight * likely[place + 1]!;
      c += weight * likely[place + 2]!;
      d += weight * likely[place + 3]!;
      e += weight * likely[place + 4]!;
      f += weight * likely[place + 5]!;
      g += weight * likely[place + 6]!;
      h += weight * likely[place + 7]!;
    }
    means[0] = a;
    means[1] = b;
    means[2] = c;
    means[3] = d;
    means[4] = e;
    means[5] = f;
    means[6] = g;
    means[7] = h;
    for (let s = 0, cell = i; s < ROWS; s++, cell += LEVELS) {
      const mean = means[s]!;
      if (product[cell]! < SMALL || mean < SMALL) {
        sum[cell]! += Math.log(product[cell]!) + Math.log(Math.max(mean, LEAST));
        product[cell] = 1;
      } else product[cell]! *= mean;
    }
  }
}
