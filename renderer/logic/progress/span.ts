import { daysLater } from '../texts/days.ts';

/** Spans the progress page can show. */
export const spans = [
  { value: 'all', label: 'since the beginning' },
  { value: '30', label: 'the last month' },
  { value: '91', label: 'the last 3 months' },
  { value: '365', label: 'the last year' },
] as const;

export type SpanCode = (typeof spans)[number]['value'];

/** First day of a span that ends today; null = no limit. Days are ISO 8601 calendar days. */
export function spanStart(span: SpanCode, today: string): string | null {
  const days = Number(span);
  if (!Number.isFinite(days)) return null;
  return daysLater(today, -days);
}
