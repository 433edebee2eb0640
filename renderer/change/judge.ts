/** What one posterior says. */
import type { ChangeLimits } from './change-limits.ts';
import type { ChangeChances, ChangeInterval } from './change-types.ts';
import { LEVELS, levelOf, SPREADS } from './posterior/grid.ts';
import {
  chanceAbove,
  chanceOfMore,
  changeQuantile,
  levelQuantile,
  posterior,
  type Likelihood,
  type Posterior,
} from './posterior/posterior.ts';

/** Shares become percent and points. */
export interface Judgement {
  verdict: 'up' | 'down' | 'steady' | 'cannot-tell';
  chances: ChangeChances;
  change: ChangeInterval;
  before: number;
  now: number;
  visitSd: number;
  posterior: Posterior;
}

function verdictOf(chances: Pick<ChangeChances, 'up' | 'steady'>, limits: ChangeLimits): Judgement['verdict'] {
  if (chances.up >= limits.sure) return 'up';
  if (chances.up <= 1 - limits.sure) return 'down';
  return chances.steady >= limits.steadyChance ? 'steady' : 'cannot-tell';
}

function chancesOf({ change, now }: Posterior, limits: ChangeLimits): ChangeChances {
  const steady = limits.steadyPoints / 100;
  const proven = limits.provenPoints / 100;
  let ready = 0;
  for (let i = 0; i < LEVELS; i++) if (levelOf(i) >= limits.readyLevel / 100) ready += now[i]!;
  return {
    up: chanceAbove(change, 0),
    steady: chanceAbove(change, -steady) - chanceAbove(change, steady),
    gain10: chanceAbove(change, proven),
    loss10: 1 - chanceAbove(change, -proven),
    now85: ready,
  };
}

/** @param before, now from `scaleRows`; @param prior from `spreadPrior` */
export function judge(before: Likelihood, now: Likelihood, prior: readonly number[], limits: ChangeLimits): Judgement {
  const joint = posterior(before, now, prior);
  const chances = chancesOf(joint, limits);
  const at = (q: number): number => 100 * changeQuantile(joint.change, q);
  return {
    verdict: verdictOf(chances, limits),
    chances,
    change: { low: at(limits.intervalTail), mid: at(0.5), high: at(1 - limits.intervalTail) },
    before: 100 * levelQuantile(joint.before, 0.5),
    now: 100 * levelQuantile(joint.now, 0.5),
    visitSd: SPREADS.reduce((sum, spread, s) => sum + spread * joint.spread[s]!, 0),
    posterior: joint,
  };
}

/** Whether there is a verdict: all that a look ahead needs, in a fraction of the time. */
export function tells(before: Likelihood, now: Likelihood, prior: readonly number[], limits: ChangeLimits): boolean {
  const above = (x: number): number => chanceOfMore(before, now, prior, x);
  const points = limits.steadyPoints / 100;
  return verdictOf({ up: above(0), steady: above(-points) - above(points) }, limits) !== 'cannot-tell';
}
