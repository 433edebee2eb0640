import { mean } from '../../statistics/order-statistics.ts';
import type { PracticeLog } from '../../../db/types/program.ts';

/** So many days of the log are set against each other: its first and its last. */
const daysAgainst = 3;

/**
 * How far pain rose in the log: mean of its last three days less that of its first three. After a review
 * the log is looked at anew. Null with fewer than six days on which pain was said: the two would share days.
 * @param since first day that counts, YYYY-MM-DD; '' = all
 */
export function logPainRise(logs: readonly Pick<PracticeLog, 'date' | 'pain'>[], since = ''): number | null {
  const said = logs
    .filter((log) => log.pain !== null && log.date >= since)
    .sort((a, b) => a.date.localeCompare(b.date))
    .map((log) => log.pain!);
  if (said.length < 2 * daysAgainst) return null;
  return mean(said.slice(-daysAgainst))! - mean(said.slice(0, daysAgainst))!;
}
