/** Dates are kept as ISO 8601 and shown in the user's locale. */

export const showDate = (iso: string, locale?: string): string =>
  new Intl.DateTimeFormat(locale, { year: 'numeric', month: 'short', day: 'numeric', timeZone: 'UTC' }).format(
    new Date(`${iso.slice(0, 10)}T00:00:00Z`),
  );

export const showTime = (iso: string, locale?: string): string =>
  new Intl.DateTimeFormat(locale, { hour: '2-digit', minute: '2-digit' }).format(new Date(iso));
