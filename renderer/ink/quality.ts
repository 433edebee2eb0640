import type { InkDocument, InkQuality, InkVerdict } from './ink-types.ts';
import { hasPressure } from './measures/pen-pressure.ts';
import type { Contacts } from './prepare/contacts.ts';
import { GAP_MS } from './prepare/motion.ts';

/** Below these the ink is limited, and below those it tells no movement. */
export const LIMITED = { rateHz: 80, lost: 0.02 };
const UNUSABLE = { rateHz: 50, lost: 0.1, backward: 0.01, samples: 8 };
/** An interval this much over the usual one whose ends lie apart lost samples. */
const LATE = 1.5;
const MOVED_MM = 0.3;

const isTold = (column: Float64Array | null): boolean =>
  column !== null && column.some((each) => each !== 0 && !Number.isNaN(each));

/** How well the device told what the pen did. Silence without movement is a still pen, not a loss. */
export function qualityOf(document: InkDocument, read: Contacts, noiseMm: number | null): InkQuality {
  const { contacts, intervalMs, backward, samples } = read;
  let lost = 0;
  let longest: number | null = null;
  let hasMovingGap = false;
  for (const { t, x, y } of contacts) {
    for (let i = 1; i < t.length; i += 1) {
      const gap = t[i]! - t[i - 1]!;
      const isLate = gap > LATE * intervalMs!;
      const hasMoved = Math.hypot(x[i]! - x[i - 1]!, y[i]! - y[i - 1]!) > MOVED_MM;
      if (isLate && !hasMoved) continue;
      longest = Math.max(longest ?? 0, gap);
      // Without a scale nobody knows what 0.3 mm are.
      if (!document.calibrated) continue;
      if (isLate) lost += Math.round(gap / intervalMs!) - 1;
      if (gap > GAP_MS && hasMoved) hasMovingGap = true;
    }
  }
  const rateHz = intervalMs === null ? null : 1000 / intervalMs;
  const kept = samples - backward;
  const droppedShare = kept + lost === 0 ? 0 : lost / (kept + lost);
  const isUnusable =
    rateHz === null ||
    rateHz < UNUSABLE.rateHz ||
    droppedShare > UNUSABLE.lost ||
    backward > UNUSABLE.backward * samples ||
    kept < UNUSABLE.samples;
  const isLimited =
    rateHz === null || rateHz < LIMITED.rateHz || droppedShare > LIMITED.lost || hasMovingGap || !document.calibrated;
  const verdict: InkVerdict = isUnusable ? 'unusable' : isLimited ? 'limited' : 'good';
  return {
    verdict,
    rateHz,
    droppedShare,
    longestGapMs: longest,
    noiseMm,
    pressure: contacts.length > 0 && hasPressure(contacts),
    tilt: document.traces.some(({ tiltX, tiltY }) => isTold(tiltX) || isTold(tiltY)),
    hover: document.traces.some(({ kind, x }) => kind === 'up' && x.length > 0),
    calibrated: document.calibrated && samples > 0,
  };
}
