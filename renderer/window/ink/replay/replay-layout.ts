/** Where a recording lies and how fast it was, reckoned once, away from the window. */
import type { InkDocument, InkTrace } from '../../../ink/index.ts';

/** A contact or the way between two: views into one buffer, so that thousands of them cross to the window at once. */
type ReplayTrace = Pick<InkTrace, 'kind' | 'x' | 'y' | 't'>;

export interface ReplayLayout {
  traces: ReplayTrace[];
  /** What the views look into; handed over instead of copied. */
  buffer: ArrayBuffer;
  box: { left: number; top: number; width: number; height: number };
  startMs: number;
  seconds: number;
  /** 95th percentile of the speed between samples, units a second. */
  fastest: number;
}

/** Units a second between a sample and the one before it. */
export function speedAt(x: Float64Array, y: Float64Array, t: Float64Array, i: number): number {
  const seconds = (t[i]! - t[i - 1]!) / 1000;
  return seconds > 0 ? Math.hypot(x[i]! - x[i - 1]!, y[i]! - y[i - 1]!) / seconds : 0;
}

/** The samples of all traces one after the other: x, y and time of each trace side by side. */
function packed(traces: readonly InkTrace[]): Pick<ReplayLayout, 'traces' | 'buffer'> {
  const all = new Float64Array(traces.reduce((sum, { x, t }) => sum + (t ? 3 : 2) * x.length, 0));
  let at = 0;
  const view = (column: Float64Array): Float64Array => {
    all.set(column, at);
    at += column.length;
    return all.subarray(at - column.length, at);
  };
  return {
    traces: traces.map(({ kind, x, y, t }) => ({ kind, x: view(x), y: view(y), t: t && view(t) })),
    buffer: all.buffer,
  };
}

function speedsOf({ x, y, t }: InkTrace): number[] {
  return t ? Array.from({ length: Math.max(0, t.length - 1) }, (_, i) => speedAt(x, y, t, i + 1)) : [];
}

export function replayLayout(ink: InkDocument): ReplayLayout {
  const downs = ink.traces.filter(({ kind, x }) => kind === 'down' && x.length > 0);
  let [left, right, top, bottom] = [Infinity, -Infinity, Infinity, -Infinity];
  for (const { x, y } of downs) {
    for (let i = 0; i < x.length; i += 1) {
      left = Math.min(left, x[i]!);
      right = Math.max(right, x[i]!);
      top = Math.min(top, y[i]!);
      bottom = Math.max(bottom, y[i]!);
    }
  }
  const startMs = downs[0]?.t?.[0] ?? 0;
  const last = downs.at(-1)?.t;
  const speeds = Float64Array.from(downs.flatMap(speedsOf)).sort();
  return {
    ...packed(ink.traces),
    box: { left, top, width: right - left || 1, height: bottom - top || 1 },
    startMs,
    seconds: last ? Math.max(0, (last[last.length - 1]! - startMs) / 1000) : 0,
    fastest: speeds[Math.floor(speeds.length * 0.95)] || 1,
  };
}
