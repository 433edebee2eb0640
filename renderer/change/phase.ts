/** Log likelihood of the level of a run of visits: before, or now. */
import { CELLS, EFFECTS, EFFECT_WEIGHTS, LEVELS, LOGITS, logistic, SPREADS } from './posterior/grid.ts';
import { visitTable } from './visit-table.ts';

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
  for (const [group, { log, readers }] of groups) {
    addVisit(all, group === null ? log : overLeniency(log, readerSpread / Math.sqrt(readers)), 1);
  }
  return all;
}

/** Adds a visit's table with a weight, in place. */
export function addVisit(sum: Float64Array, table: Float64Array, weight: number): void {
  for (let cell = 0; cell < CELLS; cell++) sum[cell]! += weight * table[cell]!;
}

/** For one level: levels that lenient or strict readers see instead, with their weights. */
interface Seen {
  levels: Int32Array;
  weights: Float64Array;
}

/** Few spreads of leniency occur: that of one reader over the root of how many read together. */
const seenBySpread = new Map<number, Seen[]>();

/** Linear between levels, the ends held. */
function seenWith(spread: number): Seen[] {
  const known = seenBySpread.get(spread);
  if (known) return known;
  const seen = LOGITS.map((logit): Seen => {
    const weights = new Map<number, number>();
    const add = (level: number, weight: number): void => void weights.set(level, (weights.get(level) ?? 0) + weight);
    EFFECTS.forEach((z, k) => {
      const place = Math.min(LEVELS - 1, Math.max(0, LEVELS * logistic(logit + spread * z) - 0.5));
      const below = Math.min(Math.floor(place), LEVELS - 2);
      add(below, EFFECT_WEIGHTS[k]! * (1 - (place - below)));
      add(below + 1, EFFECT_WEIGHTS[k]! * (place - below));
    });
    return { levels: Int32Array.from(weights.keys()), weights: Float64Array.from(weights.values()) };
  });
  if (seenBySpread.size > 50) seenBySpread.clear();
  seenBySpread.set(spread, seen);
  return seen;
}

/** Likelihood averaged over what the readers' leniency may be. */
function overLeniency(log: Float64Array, spread: number): Float64Array {
  let top = -Infinity;
  for (let cell = 0; cell < CELLS; cell++) if (log[cell]! > top) top = log[cell]!;
  const seen = seenWith(spread);
  const out = new Float64Array(CELLS);
  const likely = new Float64Array(LEVELS);
  for (let s = 0; s < SPREADS.length; s++) {
    for (let i = 0; i < LEVELS; i++) likely[i] = Math.exp(log[s * LEVELS + i]! - top);
    for (let i = 0; i < LEVELS; i++) {
      const { levels, weights } = seen[i]!;
      let sum = 0;
      for (let k = 0; k < levels.length; k++) sum += weights[k]! * likely[levels[k]!]!;
      out[s * LEVELS + i] = Math.log(Math.max(sum, 1e-300)) + top;
    }
  }
  return out;
}
