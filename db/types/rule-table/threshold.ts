/** The one way to read a number of the rule table. A missing row is an error, never a number written in the code. */
import { onceFor } from './once-for.ts';
import { RuleTableError } from './rule-table-error.ts';
import type { Threshold } from '../rules.ts';

/** Thresholds by code, in the unit of their row. */
export type Thresholds = ReadonlyMap<string, number>;

/** Rows of a table by code. */
export const thresholdsOf = onceFor(
  (rows: readonly Pick<Threshold, 'code' | 'value'>[]): Thresholds =>
    new Map(rows.map((each) => [each.code, each.value])),
);

/**
 * Value of a threshold in the unit of its row.
 * @throws RuleTableError naming the row that is missing
 */
export function threshold(table: Thresholds | readonly Pick<Threshold, 'code' | 'value'>[], code: string): number {
  const value = (table instanceof Map ? (table as Thresholds) : thresholdsOf(table as readonly Threshold[])).get(code);
  if (value === undefined) {
    throw new RuleTableError([{ path: ['thresholds', code], reason: `There is no threshold "${code}".` }]);
  }
  return value;
}
