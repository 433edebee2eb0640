/**
 * The model's own parts asked after every retest of a simulated client. Only the bookkeeping of the weights is done
 * here, so that a look costs one posterior; tests/change/looks.test.ts holds it equal to the door.
 */
import { rulesCurrent } from '../../../db/rules/index.ts';
import { changeLimits } from '../../../renderer/change/index.ts';
import { CELLS } from '../../../renderer/change/posterior/grid.ts';
import { judge, type Judgement } from '../../../renderer/change/judge.ts';
import { addVisit } from '../../../renderer/change/phase.ts';
import { chanceOfMore, scaleRows } from '../../../renderer/change/posterior/posterior.ts';
import { spreadPrior } from '../../../renderer/change/spread-prior.ts';
import { visitTable } from '../../../renderer/change/visit-table.ts';

export const limits = changeLimits(rulesCurrent().thresholds);
/** What is known of a client's spread in a clinic without repeat pairs. */
export const priorWithoutPairs = spreadPrior([], limits);

/** What is asked at a look: the chance of more always, the whole judgement when asked. */
export interface Look {
  /** 0 for the first retest. */
  at: number;
  up: number;
  judged: () => Judgement;
}

/**
 * @param right words right at each visit, the baselines first
 * @param prior chances of the spreads
 */
export function looksOf(
  right: readonly number[],
  words: number,
  baselines: number,
  prior: readonly number[] = priorWithoutPairs,
): Look[] {
  const start = new Float64Array(CELLS);
  for (const count of right.slice(0, baselines)) addVisit(start, visitTable(count, words), 1);
  const before = scaleRows(start);
  const log = new Float64Array(CELLS);
  return right.slice(baselines).map((count, at) => {
    const table = visitTable(count, words);
    for (let cell = 0; cell < CELLS; cell++) log[cell] = limits.decay * log[cell]! + table[cell]!;
    const now = scaleRows(log);
    return { at, up: chanceOfMore(before, now, prior), judged: () => judge(before, now, prior, limits) };
  });
}

/** Whether the interval of the change holds no change: the chance of more lies between its tails. */
export const coversNone = ({ up }: Look): boolean => limits.intervalTail <= up && up <= 1 - limits.intervalTail;

/** Whether the interval of the change holds the true one (points). */
export const covers = ({ change }: Judgement, truth: number): boolean => change.low <= truth && truth <= change.high;
