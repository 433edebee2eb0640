/**
 * The model's own parts asked after every retest of a simulated client. Only the bookkeeping of the weights is done
 * here, so that a look costs one posterior; tests/change/looks.test.ts holds it equal to the door.
 */
import { rulesCurrent } from '../../../db/rules/index.ts';
import { changeLimits } from '../../../renderer/change/index.ts';
import { judge, type Judgement } from '../../../renderer/change/judge.ts';
import { addVisit, phaseLikelihood, phaseOf, type PhaseVisit } from '../../../renderer/change/phase.ts';
import { chanceOfMore, scaleRows } from '../../../renderer/change/posterior/posterior.ts';
import { spreadPrior } from '../../../renderer/change/spread-prior.ts';

export const limits = changeLimits(rulesCurrent().thresholds);
/** What is known of a client's spread in a clinic without repeat pairs. */
export const priorWithoutPairs = spreadPrior([], limits);

/** Visits of one reader. */
export const asVisits = (right: readonly number[], words: number): PhaseVisit[] =>
  right.map((count) => ({ right: count, words, group: null, readers: 1 }));

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
  const before = scaleRows(
    phaseLikelihood(phaseOf(asVisits(right.slice(0, baselines), words), 1), limits.readerSpread),
  );
  const phase = phaseOf([], limits.decay);
  return asVisits(right.slice(baselines), words).map((visit, at) => {
    addVisit(phase, visit);
    const now = scaleRows(phaseLikelihood(phase, limits.readerSpread));
    return { at, up: chanceOfMore(before, now, prior), judged: () => judge(before, now, prior, limits) };
  });
}

/** Whether the interval of the change holds no change: the chance of more lies between its tails. */
export const coversNone = ({ up }: Look): boolean => limits.intervalTail <= up && up <= 1 - limits.intervalTail;

/** Whether the interval of the change holds the true one (points). */
export const covers = ({ change }: Judgement, truth: number): boolean => change.low <= truth && truth <= change.high;
