import type { ClientRecord } from '../../../db/types/record.ts';

/**
 * The record as it was at a visit: facts of this visit and of those before it. Visits of one day stand in the order of
 * the record. The client's own sheet (name, cautions, diagnoses) has no dates and stays as it is now.
 * @param visitId a visit that the record does not hold gives the record whole
 */
export function recordAsOf(record: ClientRecord, visitId: string): ClientRecord {
  const visits = record.visits
    .map((visit, at) => ({ visit, at }))
    .sort((a, b) => (a.visit.date < b.visit.date ? -1 : a.visit.date > b.visit.date ? 1 : a.at - b.at))
    .map(({ visit }) => visit);
  const last = visits.findIndex(({ id }) => id === visitId);
  const now = visits[last];
  if (!now) return record;
  const later = new Set(visits.slice(last + 1).map(({ id }) => id));
  const known = <F extends { visitId: string }>(facts: F[]): F[] => facts.filter((fact) => !later.has(fact.visitId));
  const goals = record.goals.filter((goal) => goal.setOn <= now.date);
  return {
    client: record.client,
    visits: record.visits.filter(({ id }) => !later.has(id)),
    intakeAnswers: known(record.intakeAnswers),
    redFlags: known(record.redFlags),
    setups: known(record.setups),
    samples: known(record.samples),
    samplePages: known(record.samplePages),
    pageMeasurements: known(record.pageMeasurements),
    inkRecordings: known(record.inkRecordings),
    spiralSheets: known(record.spiralSheets),
    readings: known(record.readings),
    programs: known(record.programs),
    practiceLogs: record.practiceLogs.filter((log) => log.date <= now.date),
    practicePages: record.practicePages.filter((page) => page.date <= now.date),
    goals,
    goalRatings: known(record.goalRatings),
    pageDrafts: known(record.pageDrafts),
    issuedPages: known(record.issuedPages),
    // Asked once, of the client and not of a visit.
    writingOccasions: record.writingOccasions,
    signatureChecks: known(record.signatureChecks),
    trials: known(record.trials),
    visitPlans: known(record.visitPlans),
  };
}
