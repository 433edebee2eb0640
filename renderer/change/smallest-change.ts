/** How small a change can be seen with so many samples of so many words: for planning, and for goal levels. */
import type { ChangeLimits } from './change-limits.ts';

export interface SmallestQuestion {
  /** Share of words right, 0 to 1. */
  p: number;
  /** Words of a sample, more than 0. */
  words: number;
  /** Samples before and now, at least 1 each. */
  n1: number;
  n2: number;
  /** Spread from visit to visit, logit. */
  sd: number;
}

/** Percentage points. */
export interface SmallestChange {
  /** Two means of an unchanged hand differ by less in 95 of 100 clients. */
  mdc95: number;
  /** The model says up or down for a change of this size in about 8 of 10 clients. */
  callable: number;
  /** A goal level judged by `n2` tries together is at least this wide. */
  levelWidth: number;
}

/** 1.96 standard errors, and what the model needs for 8 of 10 (by simulation), both in points. */
const MDC = 196;
const CALLABLE = 341.8;
/** A level's half width is one standard error of the tries together: 1 in 3 falls into a neighbor, 1 in 300 beyond. */
const WIDTH = 200;

/** Variance of a sample's share: counting so many words, and the visit. */
const variance = (p: number, words: number, sd: number): number => (p * (1 - p)) / words + (p * (1 - p) * sd) ** 2;

export function smallestChange(
  { p, words, n1, n2, sd }: SmallestQuestion,
  { decay }: Pick<ChangeLimits, 'decay'>,
): SmallestChange {
  const v = variance(p, words, sd);
  const weight = decay === 1 ? n2 : (1 - decay ** n2) / (1 - decay);
  return {
    mdc95: MDC * Math.sqrt(v / n1 + v / n2),
    callable: CALLABLE * Math.sqrt(v / n1 + v / weight),
    levelWidth: WIDTH * Math.sqrt(v / n2),
  };
}
