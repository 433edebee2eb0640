/** Counters that payers ask for: since when, how many, what is due. Every interval is the clinic's own. */
import { daysBetween } from '../../texts/days.ts';
import type { Care } from '../../../../db/types/client.ts';
import type { Visit } from '../../../../db/types/visit.ts';
import { plural } from '../../texts/count-words.ts';
import { type DatedRecord, dayOf, longDate, visitsUpTo } from '../sheet/page-facts.ts';

/** Care of which nothing is noted yet. */
export const noCare: Care = {
  startOn: null,
  payer: '',
  codes: '',
  authorizedVisits: null,
  reportEveryVisits: null,
  reportEveryDays: null,
  certifiedUntil: null,
  priorLevel: '',
  potential: '',
  outsideTests: [],
  missedVisits: [],
};

export const careOf = (input: DatedRecord): Care => input.record.client.care ?? noCare;

export interface Counter {
  text: string;
  /** It is reached or past: to be shown as a warning. */
  due: boolean;
}

/** Start of care: as noted, else the first visit. */
export const startOfCare = (input: DatedRecord): string | null =>
  careOf(input).startOn ?? visitsUpTo(input)[0]?.date ?? null;

/** Visits and days since the last progress report, or since the start of care. */
export function sinceLastReport(input: DatedRecord): { from: string; visits: Visit[]; days: number } {
  const day = dayOf(input);
  const days = new Map(input.record.visits.map((v) => [v.id, v.date]));
  const last = input.record.issuedPages
    .filter((page) => page.kind === 'progress-report' && (days.get(page.visitId) ?? page.issuedAt.slice(0, 10)) < day)
    .map((page) => days.get(page.visitId) ?? page.issuedAt.slice(0, 10))
    .sort()
    .at(-1);
  const from = last ?? startOfCare(input) ?? day;
  const since = visitsUpTo(input).filter((v) => (last ? v.date > last : v.date >= from));
  return { from, visits: since, days: daysBetween(from, day) };
}

/** What is counted for this client, in words; only what an interval was set for can be due. */
export function counters(input: DatedRecord, locale: string): Counter[] {
  const care = careOf(input);
  const day = dayOf(input);
  const { visits: since, days } = sinceLastReport(input);
  const visits = since.length;
  const all = visitsUpTo(input).filter((v) => v.date >= (startOfCare(input) ?? v.date)).length;
  const limits = [
    care.reportEveryVisits === null ? '' : plural(care.reportEveryVisits, 'visit'),
    care.reportEveryDays === null ? '' : plural(care.reportEveryDays, 'day'),
  ].filter(Boolean);
  const due =
    (care.reportEveryVisits !== null && visits >= care.reportEveryVisits) ||
    (care.reportEveryDays !== null && days >= care.reportEveryDays);
  const rule = limits.length === 0 ? '' : `; a report is due ${due ? 'now' : `after ${limits.join(' or ')}`}`;
  const list: Counter[] = [
    { text: `${plural(visits, 'visit')} and ${plural(days, 'day')} since the last report or the start${rule}.`, due },
  ];
  if (care.authorizedVisits !== null) {
    const left = care.authorizedVisits - all;
    const text =
      left < 0
        ? `${all} visits used, ${-left} more than the ${care.authorizedVisits} authorized.`
        : `${all} of ${care.authorizedVisits} authorized visits used, ${left} left.`;
    list.push({ text, due: left <= 0 });
  }
  if (care.certifiedUntil !== null) {
    const left = daysBetween(day, care.certifiedUntil);
    const on = longDate(care.certifiedUntil, locale);
    const text =
      left < 0
        ? `Certification ended on ${on}, ${plural(-left, 'day')} ago.`
        : `Certified until ${on}: ${plural(left, 'day')} left.`;
    list.push({ text, due: left < 0 });
  }
  const missed = care.missedVisits.filter((one) => one.on <= day).length;
  if (missed > 0) list.push({ text: `${plural(missed, 'visit')} missed.`, due: false });
  return list;
}
