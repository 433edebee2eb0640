/** Proposals for the program and what its ladder asks, from the same posterior. */
import type { ChangeLimits } from './change-limits.ts';
import type { ChangeChances } from './change-types.ts';

/** What the retests since the last approved step say. */
export interface StepSigns {
  /** Getting better: go on. */
  better: boolean;
  /** Below the own start, by more than a little: step back. */
  back: boolean;
  /** High enough for the next rung; rules on letters, fatigue and pain come on top. */
  ready: boolean;
  /** Four weeks of retests without a gain that matters. */
  plateau: boolean;
}

/**
 * @param chances of baseline against the retests since the last approved step; null when nothing was compared
 * @param retests how many visits that is
 * @param days from the last approved step, or from the last baseline visit, to the last retest
 */
export function stepSigns(
  chances: ChangeChances | null,
  retests: number,
  days: number,
  limits: ChangeLimits,
): StepSigns {
  if (!chances) return { better: false, back: false, ready: false, plateau: false };
  const better = chances.up >= limits.betterChance;
  const back = 1 - chances.up >= limits.betterChance && chances.loss10 >= limits.backChance;
  return {
    better,
    back,
    ready: retests >= limits.readyRetests && chances.now85 >= limits.readyChance,
    plateau:
      days >= limits.plateauDays &&
      retests >= limits.plateauRetests &&
      chances.gain10 < limits.plateauChance &&
      !better &&
      !back,
  };
}
