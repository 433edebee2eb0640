import { median } from '../../statistics/order-statistics.ts';
import type { RulingResult } from '../types.ts';

/**
 * Distances of printed lines on sold and on our own paper, mm: 9/32 inch (college, 7.14), 11/32 inch (wide, 8.73), 1/4
 * inch and metric ones (common practice, no source).
 */
const USUAL_MM = [4, 5, 6, 6.35, 7, 7.14, 8, 8.73, 9, 10, 12, 14, 15, 16];
/** Sold sheets differ from their nominal distance by up to this: a notebook of 7.14 mm was measured at 7.21. */
export const RULING_TOLERANCE = 0.015;
/** Steps that agree with their median to this share are one ruling; this share of them must. */
const EVEN = 0.015;
const MOSTLY = 0.7;

/** Usual distance of parallel printed lines, mm; null with fewer than four or when they are not even. */
export function pitchOf(rulings: readonly RulingResult[], axis: 'across' | 'down'): number | null {
  const places = rulings
    .filter((r) => r.kind !== 'dashed')
    .filter((r) => Math.abs(r.to.yMm - r.from.yMm) < Math.abs(r.to.xMm - r.from.xMm) === (axis === 'across'))
    .map((r) => (axis === 'across' ? (r.from.yMm + r.to.yMm) / 2 : (r.from.xMm + r.to.xMm) / 2))
    .sort((a, b) => a - b);
  if (places.length < 4) return null;
  const steps = places.slice(1).map((place, i) => place - places[i]!);
  const usual = median(steps)!;
  const even = steps.filter(
    (step) => Math.abs(step / usual - Math.round(step / usual)) < EVEN * Math.max(1, step / usual),
  );
  return even.length >= MOSTLY * steps.length ? usual : null;
}

/** The usual ruling that a measured distance fits to `tolerance`; null when it fits none. */
export function usualRuling(pitchMm: number, tolerance: number): number | null {
  return USUAL_MM.find((mm) => Math.abs(pitchMm / mm - 1) <= tolerance) ?? null;
}
