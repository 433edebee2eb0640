import type { Shown } from '../shown.ts';

/** Figures: the caseload asked as a whole. */
export const figuresEn = {
  savedNoClientIs: 'Saved. No client is named in it.',
  ofTo: (has: Shown, total: Shown, percent: Shown, percent2: Shown, percent3: Shown) =>
    `${has} of ${total}: ${percent} % (${percent2} to ${percent3})`,
  of: (has: Shown, total: Shown) => `${has} of ${total}`,
  counted: (total: Shown) => `${total} counted`,
  to: (round: Shown, round2: Shown) => ` (${round} to ${round2})`,
  figures: 'Figures',
  countsWith95Intervals: (least: Shown) =>
    `Counts with 95 % intervals; no share for fewer than ${least} clients; nobody is named or ranked.`,
  saveAsCsvWithout: 'Save as CSV, without names',
  readingEveryRecord: 'Reading every record …',
  by: 'By',
  diagnosis: 'Diagnosis',
  whatIsWritten: 'What is written',
  whatMayNotBe: 'What may not be concluded',
  recordsCouldNotBe: (unread: Shown) =>
    `${unread} records could not be read and are not counted. Open them from the caseload to see why.`,
  figuresByGroup: 'Figures by group',
  figuresBy: (isDiagnoses: boolean) => `Figures by ${isDiagnoses ? 'diagnosis' : 'what is written'}`,
  group: 'Group',
  clients: 'Clients',
  metGoalThatCame: 'Met a goal that came due',
  moreWordsReadBeyond: 'More words read, beyond noise',
  fewerBeyondNoise: 'Fewer, beyond noise',
  cannotTellNotCompared: 'Cannot tell; not compared',
  changePointsMedian: 'Change, points (median)',
  halfOfPracticeDays: 'Half of the practice days back',
  visitsMedian: 'Visits (median)',
  authorizedVisitsUsed: 'Authorized visits used, %',
  rulesThatWereChanged: 'Rules that were changed most',
  noLineOfApproved: 'No line of an approved program was kept against a caution or reworded.',
  rulesByHowOften: 'Rules by how often their lines were changed',
  rule: 'Rule',
  whyItGivesLine: 'Why it gives the line',
  linesGiven: 'Lines given',
  keptAgainstCaution: 'Kept against a caution',
  reworded: 'Reworded',
};
