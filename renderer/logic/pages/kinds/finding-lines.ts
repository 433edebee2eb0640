/** What the intake screen found, item by item, and the same items then and now: for evaluation, progress and discharge. */
import type { Side } from '../../../../db/types/common.ts';
import type { ItemTable } from '../../../../db/types/items.ts';
import type { ClientRecord } from '../../../../db/types/record.ts';
import { findings } from '../../intake/findings.ts';
import { recordAsOf } from '../../record/record-as-of.ts';
import { latestAnswers } from '../../record/latest-answers.ts';
import { toldEnglish } from '../../texts/screens/told-english.ts';

/** Each item that was asked, in the table's order: grade, words, side, or "not tested" and why; then those not opened. */
export function findingLines(record: ClientRecord, table: ItemTable): string[] {
  const found = new Map<string, string[]>();
  for (const one of findings(record.intakeAnswers, table, null, toldEnglish.findings))
    found.set(one.code, [...(found.get(one.code) ?? []), one.sentence]);
  const asked = table.items.flatMap((item) => found.get(item.code) ?? []);
  const closed = table.items.filter((item) => !found.has(item.code)).map((item) => item.title.toLowerCase());
  return closed.length === 0 ? asked : [...asked, `Not opened, nothing pointed to them: ${closed.join(', ')}.`];
}

interface Graded {
  item: string;
  side: Side;
  grade: number;
}

const graded = (record: ClientRecord): Graded[] =>
  latestAnswers(record.intakeAnswers).flatMap(({ item, side, state, grade }) =>
    state === 'graded' && grade !== null ? [{ item, side, grade }] : [],
  );

const sideWords: Record<Side, string> = { right: ', right', left: ', left', both: ', both sides', none: '' };

/**
 * Items that were graded at two visits, first against latest up to the visit: "Pen grasp, right: 1 then, 2 now (3 =
 * none)". Items graded once are named as not asked again.
 */
export function thenAndNowFindings(record: ClientRecord, visitId: string, table: ItemTable): string[] {
  const visits = [...record.visits].sort((a, b) => a.date.localeCompare(b.date));
  const firstAsked = visits.find((visit) => record.intakeAnswers.some((answer) => answer.visitId === visit.id));
  if (!firstAsked || firstAsked.id === visitId) return [];
  const then = graded(recordAsOf(record, firstAsked.id));
  const now = recordAsOf(record, visitId);
  const again = new Set(
    now.intakeAnswers.filter((answer) => answer.visitId !== firstAsked.id).map((answer) => answer.item),
  );
  const titles = new Map(table.items.map((item) => [item.code, item.title]));
  const latest = graded(now);
  const lines = then.flatMap(({ item, side, grade }) => {
    if (!again.has(item)) return [];
    const match = latest.find((each) => each.item === item && each.side === side);
    return match ? [`${titles.get(item) ?? item}${sideWords[side]}: ${grade} then, ${match.grade} now.`] : [];
  });
  const once = [...new Set(then.filter(({ item }) => !again.has(item)).map(({ item }) => titles.get(item) ?? item))];
  return [
    ...(lines.length > 0 ? ['Grades 0 to 3; 3 is no difficulty.', ...lines] : []),
    ...(once.length > 0 ? [`Not asked again: ${once.join(', ').toLowerCase()}.`] : []),
  ];
}
