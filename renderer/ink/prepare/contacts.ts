import { median } from '../../statistics/order-statistics.ts';
import type { InkDocument } from '../ink-types.ts';

/** A pen-down trace with rising times. */
export interface Contact {
  /** Its place in `document.traces`. */
  trace: number;
  /** ms. */
  t: Float64Array;
  x: Float64Array;
  y: Float64Array;
  force: Float64Array | null;
}

export interface Contacts {
  contacts: Contact[];
  /** Median interval between samples of a contact, ms; null where no contact has two. */
  intervalMs: number | null;
  /** Samples left out because their time did not go on. */
  backward: number;
  /** Pen-down samples in all. */
  samples: number;
}

/**
 * Contacts in the order of time. A sample that is not later than the one before it is left out.
 * A document without times has none.
 */
export function contactsOf(document: InkDocument): Contacts {
  const downs = document.traces
    .map((trace, index) => ({ trace, index }))
    .filter(({ trace }) => trace.kind === 'down' && trace.x.length > 0);
  const samples = downs.reduce((sum, { trace }) => sum + trace.x.length, 0);
  if (downs.some(({ trace }) => trace.t === null)) return { contacts: [], intervalMs: null, backward: 0, samples };
  downs.sort((a, b) => a.trace.t![0]! - b.trace.t![0]!);

  const contacts: Contact[] = [];
  const intervals: number[] = [];
  let backward = 0;
  let last = -Infinity;
  for (const { trace, index } of downs) {
    const t = trace.t!;
    const kept: number[] = [];
    for (let i = 0; i < t.length; i += 1) {
      if (t[i]! <= last) {
        backward += 1;
        continue;
      }
      if (kept.length > 0) intervals.push(t[i]! - last);
      last = t[i]!;
      kept.push(i);
    }
    if (kept.length === 0) continue;
    const pick = (column: Float64Array): Float64Array =>
      kept.length === t.length ? column : Float64Array.from(kept, (i) => column[i]!);
    const force = trace.force ? pick(trace.force) : null;
    contacts.push({ trace: index, t: pick(t), x: pick(trace.x), y: pick(trace.y), force });
  }
  return { contacts, intervalMs: median(intervals), backward, samples };
}
