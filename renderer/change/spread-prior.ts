/** What is known beforehand of a client's spread from visit to visit: from other clinics, then from repeat pairs. */
import { CELLS, LEVELS, lognormalOverSpreads, SPREADS } from './posterior/grid.ts';
import type { ChangeLimits } from './change-limits.ts';
import type { Count, RepeatPair } from './change-types.ts';
import { familyOf } from './families.ts';
import { visitTable } from './visit-table.ts';

type Limits = Pick<ChangeLimits, 'pairSpread' | 'betweenClinics' | 'withinClinic' | 'visitsApart'>;

/** Two samples of one client soon after each other. */
export type CountPair = readonly [first: Count, second: Count];

/** How likely a pair is under each spread, relative: averaged over the levels, all equally likely. */
function pairLikelihood([first, second]: CountPair): number[] {
  const a = visitTable(first.right, first.words);
  const b = visitTable(second.right, second.words);
  let top = -Infinity;
  for (let cell = 0; cell < CELLS; cell++) top = Math.max(top, a[cell]! + b[cell]!);
  return SPREADS.map((_, s) => {
    let sum = 0;
    for (let cell = s * LEVELS; cell < (s + 1) * LEVELS; cell++) sum += Math.exp(a[cell]! + b[cell]! - top);
    return sum;
  });
}

/** Of each clinic's pairs, by what else decides: the same pairs are asked for at every look at every client. */
const kept = new WeakMap<readonly RepeatPair[], Map<string, number[]>>();

/**
 * The same for the pairs of one task family and kind of reader, out of all of the clinic's.
 * @param pairs counts that cannot be read are left out; the array must not be changed afterwards
 */
export function clinicPrior(
  pairs: readonly RepeatPair[],
  family: string,
  kind: string,
  { pairSpread, betweenClinics, withinClinic, visitsApart }: Limits,
): number[] {
  const limits = { pairSpread, betweenClinics, withinClinic, visitsApart };
  const key = JSON.stringify([family, kind, limits]);
  const known = kept.get(pairs) ?? new Map<string, number[]>();
  kept.set(pairs, known);
  const prior = known.get(key) ?? spreadPrior(countedPairs(pairs, family, kind), limits);
  known.set(key, prior);
  return prior;
}

/** Pairs of the same task family and kind of reader, with counts that can be read. */
function countedPairs(pairs: readonly RepeatPair[], family: string, kind: string): CountPair[] {
  const fits = ({ right, words }: Count): boolean => words > 0 && right >= 0 && right <= words;
  return pairs.flatMap((pair): CountPair[] => {
    if (familyOf(pair.task || 'copy') !== family || (pair.kind || kind) !== kind) return [];
    return fits(pair.first) && fits(pair.second) ? [[pair.first, pair.second]] : [];
  });
}

/**
 * Chances of the client's spread before any of its own visits is seen.
 * The clinic's usual spread of a repeat pair is learned from the clinic's pairs; the client's own lies around it,
 * larger by `visitsApart`, since visits weeks apart vary more than a pair within days.
 * @param pairs of the same task family and kind of reader
 * @returns one chance for each of `SPREADS`, adding up to 1
 */
export function spreadPrior(pairs: readonly CountPair[], limits: Limits): number[] {
  const ofPair = SPREADS.map((usual) => lognormalOverSpreads(usual, limits.withinClinic));
  const ofClient = SPREADS.map((usual) => lognormalOverSpreads(limits.visitsApart * usual, limits.withinClinic));
  const logUsual = lognormalOverSpreads(limits.pairSpread, limits.betweenClinics).map(Math.log);
  for (const pair of pairs) {
    const likely = pairLikelihood(pair);
    ofPair.forEach((chances, m) => {
      logUsual[m]! += Math.log(chances.reduce((sum, chance, s) => sum + chance * likely[s]!, 0));
    });
  }
  const top = Math.max(...logUsual);
  const usual = logUsual.map((log) => Math.exp(log - top));
  const all = usual.reduce((a, b) => a + b, 0);
  return SPREADS.map((_, s) => usual.reduce((sum, weight, m) => sum + (weight / all) * ofClient[m]![s]!, 0));
}
