/** Thresholds in the order of the work, for the screen that shows them all. */
import type { Threshold } from '../../../../db/types/rules.ts';

export interface ThresholdGroup {
  title: string;
  /** What to know before a number is changed; '' for none. */
  about: string;
  rows: Threshold[];
}

const groups: readonly { title: string; about: string; starts: RegExp }[] = [
  {
    title: 'Red flags',
    about: 'They protect the client: they can be made stricter, never milder.',
    starts: /^flag-/,
  },
  { title: 'When an item of the screen is asked', about: '', starts: /^opens-/ },
  {
    title: 'Scores from ratings',
    about: 'Pain and strain can be taken more seriously than shipped, never less.',
    starts: /^rating-/,
  },
  {
    title: 'What may start after the screen',
    about: 'They can be made stricter, never milder.',
    starts: /^start-/,
  },
  { title: 'Seat and table', about: '', starts: /^setup-/ },
  {
    title: 'Ladder of goals',
    about: 'Each rung is one reachable step above the one before; place 0 leaves a rung out.',
    starts: /^goal-rung-/,
  },
  { title: 'Goals', about: '', starts: /^goal-/ },
  {
    title: 'Whether something has changed',
    about: 'They hold for every verdict, flag, proposal and page alike. Their error rates were simulated as shipped.',
    starts: /^(change-|hand-|loss-|step-|plateau-chance|plateau-retests|onset-(least|line|bouts))/,
  },
  {
    title: 'What is due on the caseload',
    about: 'They only decide what the worklist shows, and when.',
    starts: /^work-/,
  },
  { title: 'Writing, home program and progress', about: '', starts: /./ },
];

/**
 * Rows that can be changed, grouped; those whose shipped value is the only one allowed are left out.
 * @param search words that name, unit or source must all have
 */
export function thresholdGroups(thresholds: readonly Threshold[], search: string): ThresholdGroup[] {
  const words = search.toLowerCase().split(/\s+/).filter(Boolean);
  const found = thresholds.filter((row) => {
    const said = `${row.name} ${row.unit} ${row.sourceNote}`.toLowerCase();
    return row.min < row.max && words.every((word) => said.includes(word));
  });
  const groupOf = (row: Threshold): number => groups.findIndex(({ starts }) => starts.test(row.code));
  return groups
    .map(({ title, about }, i) => ({ title, about, rows: found.filter((row) => groupOf(row) === i) }))
    .filter(({ rows }) => rows.length > 0);
}
