/** Dates are kept as ISO 8601 and shown in the shown language, as the user's region writes them. */
import { shownLocale } from './say.svelte.ts';

/** Made once a locale: making one takes as long as hundreds of dates. */
const formats = new Map<string | undefined, Intl.DateTimeFormat>();

export function showDate(iso: string, locale = shownLocale()): string {
  const format =
    formats.get(locale) ??
    new Intl.DateTimeFormat(locale, { year: 'numeric', month: 'short', day: 'numeric', timeZone: 'UTC' });
  formats.set(locale, format);
  return format.format(new Date(`${iso.slice(0, 10)}T00:00:00Z`));
}

export const showTime = (iso: string, locale = shownLocale()): string =>
  new Intl.DateTimeFormat(locale, { hour: '2-digit', minute: '2-digit' }).format(new Date(iso));
