/** The course of one line of writing: `v` at evenly spaced `u`, straight beyond its ends. */
export interface Trace {
  u0: number;
  step: number;
  v: Float64Array;
  /** Slope (v per u) of the whole course, used beyond its ends. */
  slope: number;
}

/** Height of the course at `u`, in page pixels. */
export function traceAt(trace: Trace, u: number): number {
  const at = (u - trace.u0) / trace.step;
  const last = trace.v.length - 1;
  if (at <= 0) return trace.v[0]! + trace.slope * at * trace.step;
  if (at >= last) return trace.v[last]! + trace.slope * (at - last) * trace.step;
  const k = Math.floor(at);
  return trace.v[k]! + (trace.v[k + 1]! - trace.v[k]!) * (at - k);
}

export function traceEnd(trace: Trace): number {
  return trace.u0 + (trace.v.length - 1) * trace.step;
}
