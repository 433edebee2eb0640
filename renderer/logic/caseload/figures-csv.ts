/** The figures of the caseload as CSV: groups and counts, no client. */
import { toldEnglish } from '../texts/screens/told-english.ts';
import { toCsv } from '../texts/csv-cells.ts';
import { type FigureRow, type Middle, type Share } from './figures.ts';

const round = (value: number): number => Number(value.toFixed(1));
const share = ({ has, of, share: found }: Share): (number | null)[] =>
  found === null
    ? [has, of, null, null, null]
    : [has, of, ...[found.mid, found.low, found.high].map((one) => round(100 * one))];
const middle = ({ of, median, interval }: Middle): (number | null)[] => [
  of,
  median === null ? null : round(median),
  interval === null ? null : round(interval.low),
  interval === null ? null : round(interval.high),
];
const shares = (name: string): string[] => [name, `${name}_of`, `${name}_percent`, `${name}_low`, `${name}_high`];
const middles = (name: string): string[] => [`${name}_n`, `${name}_median`, `${name}_low`, `${name}_high`];

/** @param nameOf a group's code -> its name */
export function figuresCsv(rows: readonly FigureRow[], nameOf: (group: string) => string): string {
  const header = [
    'group',
    'clients',
    ...shares('goal_met'),
    ...shares('more_words_read'),
    ...shares('fewer_words_read'),
    'cannot_tell',
    'not_compared',
    ...middles('change_points'),
    ...shares('half_of_practice_back'),
    ...middles('visits'),
    ...middles('authorized_used_percent'),
  ];
  const lines = rows.map((row) => [
    nameOf(row.group),
    row.clients,
    ...share(row.goals),
    ...share(row.better),
    ...share(row.worse),
    row.cannotTell,
    row.notCompared,
    ...middle(row.change),
    ...share(row.practised),
    ...middle(row.visits),
    ...middle(row.authorizedUsed),
  ]);
  const notes = Object.values(toldEnglish.trail.mayNotBeConcluded).map((words) => [`May not be concluded: ${words}`]);
  return toCsv(header, [...lines, ...notes]);
}
