/**
 * The grid of the model: levels of legibility and the client's spread from visit to visit, both on the logit scale.
 * Another grid is another method: raise `version.ts`.
 */

/** Levels p = (i + 0.5) / LEVELS, shares of words; all equally likely beforehand. */
export const LEVELS = 100;
/** Standard deviations of a visit's effect, logit. */
export const SPREADS: readonly number[] = [0.1, 0.2, 0.3, 0.4, 0.5, 0.65, 0.85, 1.15];
/** Cells of a likelihood: one row of levels for each spread. */
export const CELLS = SPREADS.length * LEVELS;

export const levelOf = (i: number): number => (i + 0.5) / LEVELS;
const logitOf = (p: number): number => Math.log(p / (1 - p));
export const logistic = (x: number): number => 1 / (1 + Math.exp(-x));
export const LOGITS: readonly number[] = Array.from({ length: LEVELS }, (_, i) => logitOf(levelOf(i)));

/** Places of a standard normal effect, -3 to 3, and their weights, which add up to 1. */
export const EFFECTS: readonly number[] = Array.from({ length: 13 }, (_, k) => -3 + k / 2);
const heights = EFFECTS.map((z) => Math.exp((-z * z) / 2));
const allHeights = heights.reduce((a, b) => a + b, 0);
export const EFFECT_WEIGHTS: readonly number[] = heights.map((height) => height / allHeights);

/** Half the distance of a spread's neighbors on the log scale; at the ends the whole distance to the one neighbor. */
const logSteps = SPREADS.map((spread, i) => {
  const low = SPREADS[i - 1] ?? spread;
  const high = SPREADS[i + 1] ?? spread;
  return (Math.log(high) - Math.log(low)) / (i > 0 && i < SPREADS.length - 1 ? 2 : 1);
});

/**
 * Lognormal distribution over the spreads.
 * @param median spread, logit
 * @param sigma standard deviation of its logarithm
 * @returns chances that add up to 1
 */
export function lognormalOverSpreads(median: number, sigma: number): number[] {
  const weights = SPREADS.map((spread, i) => Math.exp(-0.5 * (Math.log(spread / median) / sigma) ** 2) * logSteps[i]!);
  const sum = weights.reduce((a, b) => a + b, 0);
  return weights.map((weight) => weight / sum);
}
