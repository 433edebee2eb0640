/** Steady loss: fewer words than at the start, or than a short while ago, again or by much. */
import type { ChangeLimits } from './change-limits.ts';
import type { LossSign } from './change-types.ts';
import { phaseLikelihood, phaseOf, type PhaseVisit } from './phase.ts';
import { chanceOfMore, scaleRows, type Likelihood } from './posterior/posterior.ts';

/** The last two visits are compared with at most six before them, at least three. */
const LAST = 2;
const BEFORE_MOST = 6;
const VISITS_LEAST = 5;

/** What was compared, and what is known of it already. */
interface Losing {
  /** The compared visits, oldest first. */
  before: readonly PhaseVisit[];
  now: readonly PhaseVisit[];
  /** From `scaleRows`, of the visits before. */
  atFirst: Likelihood;
  /** Chance that there is less now than before. */
  down: number;
}

/** @param explained a noted explanation holds back the flag only: it then asks for a repeat */
export function lossSign(
  { before, now, atFirst, down }: Losing,
  prior: readonly number[],
  { readerSpread, decay, lossFlagLast, lossFlagTwice, lossAsk }: ChangeLimits,
  explained = false,
): LossSign | null {
  const likelihood = (visits: readonly PhaseVisit[], weight: number) =>
    scaleRows(phaseLikelihood(phaseOf(visits, weight), readerSpread));
  const downTwice = (): boolean =>
    down >= lossFlagTwice &&
    now.length > 1 &&
    1 - chanceOfMore(atFirst, likelihood(now.slice(0, -1), decay), prior) >= lossFlagTwice;
  const all = [...before, ...now];
  const lately =
    all.length < VISITS_LEAST
      ? 0
      : 1 - chanceOfMore(likelihood(all.slice(-LAST - BEFORE_MOST, -LAST), 1), likelihood(all.slice(-LAST), 1), prior);
  const flag = lately >= lossFlagLast || downTwice();
  if (flag) return explained ? 'ask-repeat' : 'flag';
  return Math.max(lately, down) >= lossAsk ? 'ask-repeat' : null;
}
