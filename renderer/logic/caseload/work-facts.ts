/** The few facts of one client that the worklist looks at: derived from the record, or kept small for 5,000 clients. */
import { daysLater } from '../texts/days.ts';
import { waitsForCoSign } from '../record/co-sign.ts';
import type { ClientRecord } from '../../../db/types/record.ts';
import type { WorkFacts } from '../../../electron/contract/caseload.ts';

/** Tasks that nobody reads: personal lines, signatures, a row of one letter. */
const unreadKinds: ReadonlySet<string> = new Set(['personal', 'signature', 'repeated-letter']);

/**
 * @param flagsOpen open flags of the client by the one function that decides them
 * @param today ISO date
 */
export function workFactsOf(record: ClientRecord, flagsOpen: number, today: string): WorkFacts {
  const { client } = record;
  const visits = [...record.visits].sort((a, b) => a.date.localeCompare(b.date));
  const last = visits.filter((visit) => visit.date <= today).at(-1) ?? null;
  const days = new Map(visits.map((visit) => [visit.id, visit.date]));
  const plan = [...record.visitPlans].sort((a, b) => a.at.localeCompare(b.at)).at(-1) ?? null;
  const care = client.care ?? null;
  const start = care?.startOn ?? visits[0]?.date ?? null;
  const reports = record.issuedPages
    .filter((page) => page.kind === 'progress-report')
    .map((page) => days.get(page.visitId) ?? page.issuedAt.slice(0, 10))
    .sort();
  const from = reports.at(-1) ?? start;
  const read = new Set(record.readings.map((reading) => reading.sampleId));
  const draft = record.programs.filter((program) => program.status === 'draft').at(-1) ?? null;
  const approvedAfter =
    draft && record.programs.some((program) => program.status === 'approved' && program.at > draft.at);
  return {
    clientId: client.id,
    code: client.code,
    archived: client.archivedOn !== null,
    discharged: last?.kind === 'discharge',
    lastVisit: last?.date ?? null,
    visitToday: visits.some((visit) => visit.date === today),
    nextOn: plan?.nextOn ?? null,
    nextHour: plan?.hour ?? null,
    unreadSince: record.samples
      .filter((sample) => sample.task.text !== '' && !unreadKinds.has(sample.task.kind) && !read.has(sample.id))
      .map((sample) => days.get(sample.visitId) ?? sample.takenAt.slice(0, 10)),
    reportDue: reportDue(record, from, today),
    notesUnwritten: visits
      .filter((visit) => visit.date < today && visit.skilled.trim() === '')
      .slice(-3)
      .map((visit) => visit.date),
    notCoSigned: visits.filter(waitsForCoSign).map((visit) => visit.date),
    certifiedUntil: care?.certifiedUntil ?? null,
    authorizedLeft:
      care?.authorizedVisits == null
        ? null
        : care.authorizedVisits - visits.filter((visit) => visit.date >= (start ?? '') && visit.date <= today).length,
    draftSince: draft && !approvedAfter ? (days.get(draft.visitId) ?? draft.at.slice(0, 10)) : null,
    draftNotCoSigned: draft !== null && !approvedAfter && waitsForCoSign(draft),
    goalsDue: record.goals.flatMap((goal) => (goal.status === 'active' && goal.dueOn !== null ? [goal.dueOn] : [])),
    flagsOpen,
  };
}

/** The day on which the next progress report is due by the clinic's interval; today once the visits are used up. */
function reportDue(record: ClientRecord, from: string | null, today: string): string | null {
  const care = record.client.care;
  if (!care || from === null) return null;
  const since = record.visits.filter((visit) => visit.date > from && visit.date <= today).length;
  const byVisits = care.reportEveryVisits !== null && since >= care.reportEveryVisits ? today : null;
  const byDays = care.reportEveryDays === null ? null : daysLater(from, care.reportEveryDays);
  const both = [byVisits, byDays].filter((date) => date !== null).sort();
  return both[0] ?? null;
}
