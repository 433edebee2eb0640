/** One goal scale: the level reached (-2 to +2) and its weight (above 0). */
export interface GoalRating {
  level: number;
  weight: number;
}

/**
 * Goal attainment T-score: 50 when every goal came out as expected. Levels are ranks, so show them beside the score.
 * @param rho assumed correlation between goals, 0.3 by convention
 * @returns null without goals
 * @throws RangeError for a level outside -2..2 or a weight that is not above 0
 * Source: Kiresuk & Sherman 1968, Community Mental Health Journal 4:443-453 (formulae printed in 2009 elsewhere
 * have an erratum; the original is used).
 */
export function gasTScore(ratings: readonly GoalRating[], rho = 0.3): number | null {
  if (ratings.length === 0) return null;
  for (const { level, weight } of ratings) {
    if (!(level >= -2 && level <= 2)) throw new RangeError('a level lies between -2 and 2');
    if (!(weight > 0)) throw new RangeError('a weight is above 0');
  }
  const weighted = ratings.reduce((sum, r) => sum + r.weight * r.level, 0);
  const squares = ratings.reduce((sum, r) => sum + r.weight ** 2, 0);
  const total = ratings.reduce((sum, r) => sum + r.weight, 0);
  return 50 + (10 * weighted) / Math.sqrt((1 - rho) * squares + rho * total ** 2);
}
