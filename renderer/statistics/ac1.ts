import { proportions } from './kappa.ts';

/** Agreement of two readers that stays meaningful when nearly all words are legible. */
export interface Ac1Result {
  observed: number;
  chance: number;
  ac1: number;
}

/**
 * Gwet's AC1 of a square table of counts.
 * @throws RangeError for a table that is not square, is empty or has negative counts
 * Source: Gwet 2008, British Journal of Mathematical and Statistical Psychology 61:29-48.
 */
export function ac1(table: readonly (readonly number[])[]): Ac1Result {
  const { cells, rows, columns } = proportions(table);
  const observed = cells.reduce((sum, row, i) => sum + row[i]!, 0);
  const spread = rows.reduce((sum, p, i) => {
    const average = (p + columns[i]!) / 2;
    return sum + average * (1 - average);
  }, 0);
  const chance = spread / (cells.length - 1);
  return { observed, chance, ac1: (observed - chance) / (1 - chance) };
}
