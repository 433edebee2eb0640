/** Steady loss: fewer words than at the start, or than a short while ago, again or by much. */
import type { ChangeLimits } from './change-limits.ts';
import type { LossSign } from './change-types.ts';
import { phaseLikelihood, type PhaseVisit } from './phase.ts';
import { chanceOfMore, scaleRows } from './posterior/posterior.ts';

/** The last two visits are compared with at most six before them, at least three. */
const LAST = 2;
const BEFORE_MOST = 6;
const VISITS_LEAST = 5;

/**
 * @param before, now the compared visits, oldest first
 * @param explained a noted explanation holds back the flag only: it then asks for a repeat
 */
export function lossSign(
  before: readonly PhaseVisit[],
  now: readonly PhaseVisit[],
  prior: readonly number[],
  limits: ChangeLimits,
  explained = false,
): LossSign | null {
  const { readerSpread, decay } = limits;
  const likelihood = (visits: readonly PhaseVisit[], weight: number) =>
    scaleRows(phaseLikelihood(visits, weight, readerSpread));
  const start = likelihood(before, 1);
  const downFromStart = (visits: readonly PhaseVisit[]): number =>
    visits.length === 0 ? 0 : 1 - chanceOfMore(start, likelihood(visits, decay), prior);
  const down = downFromStart(now);
  const downBefore = downFromStart(now.slice(0, -1));
  const all = [...before, ...now];
  const lately =
    all.length < VISITS_LEAST
      ? 0
      : 1 - chanceOfMore(likelihood(all.slice(-LAST - BEFORE_MOST, -LAST), 1), likelihood(all.slice(-LAST), 1), prior);
  const flag = lately >= limits.lossFlagLast || Math.min(down, downBefore) >= limits.lossFlagTwice;
  if (flag) return explained ? 'ask-repeat' : 'flag';
  return Math.max(lately, down) >= limits.lossAsk ? 'ask-repeat' : null;
}
