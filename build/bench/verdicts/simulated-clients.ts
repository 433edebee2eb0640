/** Clients whose truth is known: words right are binomial, the logit of the level plus a visit effect, AR(1). */
import type { Random } from '../../letters/random.ts';

/** How a client varies: standard deviation of a visit's effect (logit), and its correlation with the next visit's. */
export interface Swing {
  sd: number;
  rho: number;
}

/** Effects of consecutive visits, mean 0. */
export function visitEffects(random: Random, visits: number, { sd, rho }: Swing): number[] {
  let effect = random.normal();
  return Array.from({ length: visits }, (_, i) => {
    if (i > 0) effect = rho * effect + Math.sqrt(1 - rho * rho) * random.normal();
    return sd * effect;
  });
}

export function binomial(random: Random, n: number, p: number): number {
  let right = 0;
  for (let i = 0; i < n; i++) if (random.next() < p) right += 1;
  return right;
}

const atLogit = (level: number, effect: number): number => 1 / (1 + ((1 - level) / level) * Math.exp(-effect));

/** Words right at each visit. @param levels true share of words right, between 0 and 1, exclusive */
export function wordsRight(random: Random, words: number, levels: readonly number[], swing: Swing): number[] {
  const effects = visitEffects(random, levels.length, swing);
  return levels.map((level, i) => binomial(random, words, atLogit(level, effects[i]!)));
}

/** A level from the start, and from the first retest on. */
export const stepPath = (before: number, baselines: number, now: number, retests: number): number[] => [
  ...Array.from({ length: baselines }, () => before),
  ...Array.from({ length: retests }, () => now),
];
