/** Which records have been kept as long as the clinic's own rule says. No rule ships: it is local law or the clinic's. */
import { yearsLater } from '../texts/days.ts';

interface KeptRecord {
  /** Day of the last visit; null = there was none. */
  lastVisit: string | null;
  /** Day on which the record was last changed: it counts where there was no visit. */
  lastChange: string;
}

interface Due<T> {
  record: T;
  /** The day that the years are counted from. */
  since: string;
  why: 'last-visit' | 'no-visit';
  /** Last day of the years; the record is due from the day after. */
  until: string;
}

/**
 * Records whose years are over, longest over first. A visit in the future keeps its record.
 * @param years null = no rule: nothing is ever due
 * @param today ISO 8601 day, as the days of the records
 */
export function recordsDue<T extends KeptRecord>(records: readonly T[], years: number | null, today: string): Due<T>[] {
  if (years === null) return [];
  return records
    .map((record): Due<T> => {
      const since = record.lastVisit ?? record.lastChange;
      const why = record.lastVisit === null ? 'no-visit' : 'last-visit';
      return { record, since, why, until: yearsLater(since, years) };
    })
    .filter(({ until }) => until < today)
    .sort((a, b) => (a.since < b.since ? -1 : a.since > b.since ? 1 : 0));
}
