/** Counters that payers ask for: since when, how many, what is due. Every interval is the clinic's own. */
import { daysBetween } from '../../texts/days.ts';
import type { Care } from '../../../../db/types/client.ts';
import type { Visit } from '../../../../db/types/visit.ts';
import type { Told } from '../../texts/screens/en/screens-en.ts';
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
export function sinceLastReport(input: DatedRecord): {
  from: string;
  visits: Visit[];
  days: number;
  reported: boolean;
} {
  const day = dayOf(input);
  const days = new Map(input.record.visits.map((v) => [v.id, v.date]));
  const last = input.record.issuedPages
    .filter((page) => page.kind === 'progress-report' && (days.get(page.visitId) ?? page.issuedAt.slice(0, 10)) < day)
    .map((page) => days.get(page.visitId) ?? page.issuedAt.slice(0, 10))
    .sort()
    .at(-1);
  const from = last ?? startOfCare(input) ?? day;
  const since = visitsUpTo(input).filter((v) => (last ? v.date > last : v.date >= from));
  return { from, visits: since, days: daysBetween(from, day), reported: last !== undefined };
}

/** What is counted for this client, in words; only what an interval was set for can be due. */
export function counters(input: DatedRecord, locale: string, words: Told['paper']): Counter[] {
  const care = careOf(input);
  const day = dayOf(input);
  const { visits: since, days, reported } = sinceLastReport(input);
  const visits = since.length;
  const all = visitsUpTo(input).filter((v) => v.date >= (startOfCare(input) ?? v.date)).length;
  const { reportEveryVisits, reportEveryDays, authorizedVisits, certifiedUntil } = care;
  const due =
    (reportEveryVisits !== null && visits >= reportEveryVisits) ||
    (reportEveryDays !== null && days >= reportEveryDays);
  const when = reportEveryVisits === null && reportEveryDays === null ? 'none' : due ? 'now' : 'later';
  const list: Counter[] = [];
  // On the first day there is nothing to count, unless an interval was set.
  if (days > 0 || when !== 'none')
    list.push({ text: words.sinceReport(visits, days, when, reportEveryVisits, reportEveryDays, reported), due });
  if (authorizedVisits !== null)
    list.push({ text: words.authorized(all, authorizedVisits), due: all >= authorizedVisits });
  if (certifiedUntil !== null) {
    const left = daysBetween(day, certifiedUntil);
    list.push({ text: words.certified(longDate(certifiedUntil, locale), left), due: left < 0 });
  }
  const missed = care.missedVisits.filter((one) => one.on <= day).length;
  if (missed > 0) list.push({ text: words.missed(missed), due: false });
  return list;
}
