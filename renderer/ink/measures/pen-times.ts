import type { InkSpan } from '../ink-types.ts';
import type { Contact } from '../prepare/contacts.ts';

/** How long the pen wrote, how long it was in the air. Seconds. */
export interface PenTimes {
  writing: number;
  paper: number;
  air: number;
  lifts: number;
  /** Every lift, from the end of a contact to the next one's begin, ms on the clock of the file; its length is less one interval. */
  gaps: { fromMs: number; toMs: number; seconds: number }[];
}

/** A gap this short is no lift, ms. */
const LIFT_MS = 20;

/** Contacts in the order of time. A last sample stands for one interval. */
export function timesOf(contacts: readonly Contact[], intervalMs: number): PenTimes {
  let paper = 0;
  const gaps: PenTimes['gaps'] = [];
  for (const [i, { t }] of contacts.entries()) {
    paper += t.at(-1)! - t[0]! + intervalMs;
    const next = contacts[i + 1];
    if (!next) continue;
    const gap = liftMs({ t }, next, intervalMs);
    if (gap !== null) gaps.push({ fromMs: t.at(-1)!, toMs: next.t[0]!, seconds: gap / 1000 });
  }
  const writing = contacts.at(-1)!.t.at(-1)! - contacts[0]!.t[0]! + intervalMs;
  const air = gaps.reduce((sum, { seconds }) => sum + seconds, 0);
  return { writing: writing / 1000, paper: paper / 1000, air, lifts: gaps.length, gaps };
}

/** Time in the air between two contacts, ms; null where the pen was not lifted. */
export function liftMs(before: { t: Float64Array }, after: { t: Float64Array }, intervalMs: number): number | null {
  const gap = after.t[0]! - before.t.at(-1)! - intervalMs;
  return gap > LIFT_MS + 1e-6 ? gap : null;
}

/** Gaps in the air of half a second and more. */
export const AIR_PAUSE_S = 0.5;

export const inTime = (spans: readonly InkSpan[]): InkSpan[] => spans.toSorted((a, b) => a.fromS - b.fromS);
