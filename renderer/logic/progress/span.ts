import { daysLater } from '../texts/days.ts';

/** Spans that the progress page can show, days. */
export const spans = ['all', '30', '91', '365'] as const;

export type SpanCode = (typeof spans)[number];

/** First day of a span that ends today; null = no limit. Days are ISO 8601 calendar days. */
export function spanStart(span: SpanCode, today: string): string | null {
  const days = Number(span);
  if (!Number.isFinite(days)) return null;
  return daysLater(today, -days);
}
