/** Thresholds in the order of the work, for the screen that shows them all. */
import type { Threshold } from '../../../../db/types/rules.ts';
import type { Told } from '../../texts/screens/en/screens-en.ts';

export interface ThresholdGroup {
  title: string;
  /** What to know before a number is changed; '' for none. */
  about: string;
  rows: Threshold[];
}

/** Groups in the order of the work, by the codes of their rows. */
const starts: Readonly<Record<string, RegExp>> = {
  flag: /^flag-/,
  opens: /^opens-/,
  rating: /^rating-/,
  start: /^start-/,
  setup: /^setup-/,
  ladder: /^goal-rung-/,
  goal: /^goal-/,
  change: /^(change-|hand-|loss-|step-|plateau-chance|plateau-retests|onset-(least|line|bouts))/,
  work: /^work-/,
  rest: /./,
};

/**
 * Rows that can be changed, grouped; those whose shipped value is the only one allowed are left out.
 * @param search words that name, unit or source must all have
 */
export function thresholdGroups(
  thresholds: readonly Threshold[],
  search: string,
  groups: Told['ruleWords']['groups'],
): ThresholdGroup[] {
  const words = search.toLowerCase().split(/\s+/).filter(Boolean);
  const found = thresholds.filter((row) => {
    const said = `${row.name} ${row.unit} ${row.sourceNote}`.toLowerCase();
    return row.min < row.max && words.every((word) => said.includes(word));
  });
  const codes = Object.keys(starts);
  const groupOf = (row: Threshold): string => codes.find((code) => starts[code]!.test(row.code))!;
  return codes
    .map((code) => {
      const [title, about] = groups[code]!;
      return { title, about, rows: found.filter((row) => groupOf(row) === code) };
    })
    .filter(({ rows }) => rows.length > 0);
}
