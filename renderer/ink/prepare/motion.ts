import { GRID_HZ, GRID_MS, lowPass } from './butterworth.ts';
import type { Contact } from './contacts.ts';
import { naturalSpline } from './natural-spline.ts';

/** A contact on the even grid of 5 ms, from its first sample. mm and mm/s. */
export interface Motion {
  contact: Contact;
  /** Time of the first grid point, ms. */
  startMs: number;
  /** Before the filter: what tremor is looked for in. */
  rawX: Float64Array;
  rawY: Float64Array;
  x: Float64Array;
  y: Float64Array;
  vx: Float64Array;
  vy: Float64Array;
  speed: Float64Array;
}

const LEAST_SAMPLES = 8;
const LEAST_MS = 100;
/** Gaps longer than this are filled straight, ms. */
export const GAP_MS = 50;
/** Six hours: longer contacts are no writing, and their grid would not fit. */
const MOST_MS = 6 * 3_600_000;

/** Central differences, three-point at the ends; per second. At least three values. */
export function derivative(values: Float64Array): Float64Array {
  const n = values.length;
  const out = new Float64Array(n);
  const half = GRID_HZ / 2;
  for (let i = 1; i < n - 1; i += 1) out[i] = (values[i + 1]! - values[i - 1]!) * half;
  out[0] = (-3 * values[0]! + 4 * values[1]! - values[2]!) * half;
  out[n - 1] = (3 * values[n - 1]! - 4 * values[n - 2]! + values[n - 3]!) * half;
  return out;
}

/** The samples with even steps put into long gaps: a silent pen rests, it does not swing as a spline would. */
function filled(contact: Contact, intervalMs: number): { t: Float64Array; x: Float64Array; y: Float64Array } {
  const { t, x, y } = contact;
  const step = Math.max(intervalMs, 1);
  const more = (i: number): number => {
    const gap = t[i]! - t[i - 1]!;
    return gap > GAP_MS ? Math.max(0, Math.round(gap / step) - 1) : 0;
  };
  let added = 0;
  for (let i = 1; i < t.length; i += 1) added += more(i);
  if (added === 0) return { t, x, y };
  const [ft, fx, fy] = [0, 0, 0].map(() => new Float64Array(t.length + added)) as [
    Float64Array,
    Float64Array,
    Float64Array,
  ];
  let at = 0;
  for (let i = 0; i < t.length; i += 1) {
    const count = i === 0 ? 0 : more(i);
    for (let k = 1; k <= count; k += 1) {
      const share = k / (count + 1);
      ft[at] = t[i - 1]! + (t[i]! - t[i - 1]!) * share;
      fx[at] = x[i - 1]! + (x[i]! - x[i - 1]!) * share;
      fy[at] = y[i - 1]! + (y[i]! - y[i - 1]!) * share;
      at += 1;
    }
    ft[at] = t[i]!;
    fx[at] = x[i]!;
    fy[at] = y[i]!;
    at += 1;
  }
  return { t: ft, x: fx, y: fy };
}

/** A contact's motion; null where it is too short to have one (under 8 samples or 0.1 s). */
export function motionOf(contact: Contact, intervalMs: number): Motion | null {
  const n = contact.t.length;
  const duration = contact.t[n - 1]! - contact.t[0]!;
  if (n < LEAST_SAMPLES || duration < LEAST_MS - 1e-6 || duration > MOST_MS) return null;
  const { t, x, y } = filled(contact, intervalMs);
  const startMs = t[0]!;
  const count = Math.floor(duration / GRID_MS + 1e-6) + 1;
  const rawX = naturalSpline(t, x, startMs, GRID_MS, count);
  const rawY = naturalSpline(t, y, startMs, GRID_MS, count);
  const [filteredX, filteredY] = [lowPass(rawX), lowPass(rawY)];
  const [vx, vy] = [derivative(filteredX), derivative(filteredY)];
  const speed = vx.map((each, i) => Math.hypot(each, vy[i]!));
  return { contact, startMs, rawX, rawY, x: filteredX, y: filteredY, vx, vy, speed };
}
