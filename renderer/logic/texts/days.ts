/**
 * Arithmetic on calendar days, ISO 8601 ("2026-04-15"), by date-fns: whole days, whatever the clocks do. Only the parts
 * that are used are loaded.
 */
import { addDays } from 'date-fns/addDays';
import { addYears } from 'date-fns/addYears';
import { differenceInCalendarDays } from 'date-fns/differenceInCalendarDays';
import { formatISO } from 'date-fns/formatISO';
import { parseISO } from 'date-fns/parseISO';

/** The day so many days later; earlier when negative. @throws RangeError for what is no day */
export const daysLater = (day: string, days: number): string =>
  formatISO(addDays(parseISO(day), days), { representation: 'date' });

/** The same day so many years later; of 29 February, the 28th where there is no 29th. */
export const yearsLater = (day: string, years: number): string =>
  formatISO(addYears(parseISO(day), years), { representation: 'date' });

/** Days from one day to another; negative when it lies before; NaN for what is no day. */
export const daysBetween = (from: string, to: string): number => differenceInCalendarDays(parseISO(to), parseISO(from));
