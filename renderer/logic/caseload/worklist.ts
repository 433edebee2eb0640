/**
 * What waits for the therapist over the whole caseload, by date. Pure: facts of each client in, rows
 * out; the window only draws them. Limits are rows of the threshold table.
 */
import { daysBetween, daysLater } from '../texts/days.ts';
import type { WorkFacts } from '../../../electron/contract/caseload.ts';
import { threshold } from '../../../db/types/rule-table/threshold.ts';

export type WorkGroup = 'today' | 'read' | 'report' | 'ends' | 'unplanned' | 'flag' | 'goal' | 'draft';

/** The order in which groups are shown: what cannot wait first. */
const workGroups: readonly WorkGroup[] = ['flag', 'today', 'read', 'report', 'ends', 'draft', 'goal', 'unplanned'];

export interface WorkItem {
  clientId: string;
  code: string;
  group: WorkGroup;
  /** What it is, for the row: code -> words in texts/. */
  kind:
    | 'visit'
    | 'sample'
    | 'progress-report'
    | 'visit-note'
    | 'co-sign'
    | 'certification'
    | 'authorization'
    | 'flag'
    | 'goal'
    | 'draft'
    | 'co-sign-program'
    | 'no-visit-planned'
    | 'first-visit';
  /** Day on which it is due; null = at once. */
  due: string | null;
  /** Days from today to the day it is due; negative = late by so many. */
  days: number;
  late: boolean;
  /** How many: samples, flags, visits left. */
  count: number;
  /** The day it is about: written, begun, last seen; null = none. */
  on: string | null;
  /** Hour of a visit that is planned for today; null = none. */
  hour: string | null;
}

export interface WorkLimits {
  certificationDays: number;
  authorizationVisits: number;
  noteDays: number;
  sampleLateDays: number;
  noVisitDays: number;
  reportDaysAhead: number;
  goalDaysAhead: number;
}

/** The limits as the rule table has them. @throws RuleTableError naming a row that is missing */
export const workLimits = (rows: Parameters<typeof threshold>[0]): WorkLimits => ({
  certificationDays: threshold(rows, 'work-certification-days'),
  authorizationVisits: threshold(rows, 'work-authorization-visits'),
  noteDays: threshold(rows, 'work-note-days'),
  sampleLateDays: threshold(rows, 'work-sample-days'),
  noVisitDays: threshold(rows, 'work-no-visit-days'),
  reportDaysAhead: threshold(rows, 'work-report-days'),
  goalDaysAhead: threshold(rows, 'work-goal-days'),
});

/** What is due for one client. */
function itemsOf(facts: WorkFacts, today: string, limits: WorkLimits): WorkItem[] {
  const { clientId, code } = facts;
  const item = (
    group: WorkGroup,
    kind: WorkItem['kind'],
    due: string | null,
    on: string | null = due,
    count = 1,
  ): WorkItem => {
    const days = due === null ? 0 : daysBetween(today, due);
    const hour = kind === 'visit' ? facts.nextHour : null;
    return { clientId, code, group, kind, due, days, late: days < 0, count, on, hour };
  };
  const out: WorkItem[] = [];
  if (facts.flagsOpen > 0) out.push(item('flag', 'flag', null, null, facts.flagsOpen));
  if (facts.visitToday || facts.nextOn === today)
    out.push(item('today', 'visit', today, facts.visitToday ? today : null));
  const oldest = [...facts.unreadSince].sort()[0];
  // Waits at once, late after some days.
  if (oldest)
    out.push(item('read', 'sample', daysLater(oldest, limits.sampleLateDays), oldest, facts.unreadSince.length));
  if (facts.reportDue !== null && daysBetween(today, facts.reportDue) <= limits.reportDaysAhead)
    out.push(item('report', 'progress-report', facts.reportDue));
  const notes = facts.notesUnwritten.filter((on) => daysBetween(today, daysLater(on, limits.noteDays)) <= 0).sort();
  if (notes[0] !== undefined)
    out.push(item('report', 'visit-note', daysLater(notes[0], limits.noteDays), notes[0], notes.length));
  const unsigned = [...facts.notCoSigned].sort();
  if (unsigned[0] !== undefined)
    out.push(item('report', 'co-sign', daysLater(unsigned[0], limits.noteDays), unsigned[0], unsigned.length));
  if (facts.certifiedUntil !== null && daysBetween(today, facts.certifiedUntil) <= limits.certificationDays)
    out.push(item('ends', 'certification', facts.certifiedUntil));
  if (facts.authorizedLeft !== null && facts.authorizedLeft <= limits.authorizationVisits)
    out.push(item('ends', 'authorization', null, null, facts.authorizedLeft));
  if (facts.draftSince !== null)
    out.push(item('draft', facts.draftNotCoSigned ? 'co-sign-program' : 'draft', facts.draftSince));
  for (const due of facts.goalsDue)
    if (daysBetween(today, due) <= limits.goalDaysAhead) out.push(item('goal', 'goal', due));
  const planned = facts.nextOn !== null && facts.nextOn >= today;
  if (!planned && !facts.visitToday && !facts.discharged)
    out.push(
      facts.lastVisit === null
        ? item('unplanned', 'first-visit', null)
        : item('unplanned', 'no-visit-planned', daysLater(facts.lastVisit, limits.noVisitDays), facts.lastVisit),
    );
  return out;
}

/** All that is due, the most urgent group first, the longest overdue first within it; archived clients are left out. */
export function worklist(clients: readonly WorkFacts[], today: string, limits: WorkLimits): WorkItem[] {
  const rank = new Map(workGroups.map((group, i) => [group, i]));
  return clients
    .filter((facts) => !facts.archived)
    .flatMap((facts) => itemsOf(facts, today, limits))
    .sort(
      (a, b) =>
        (rank.get(a.group) ?? 0) - (rank.get(b.group) ?? 0) ||
        a.days - b.days ||
        (a.hour ?? '').localeCompare(b.hour ?? '') ||
        a.code.localeCompare(b.code, 'en'),
    );
}
