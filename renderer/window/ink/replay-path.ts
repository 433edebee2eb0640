import type { InkDocument, InkTrace } from '../../ink/index.ts';

/** Slow to fast: the ink's own blue to a light one, 3:1 on the paper at its lightest. */
const SLOW = [26, 36, 64] as const;
const FAST = [94, 138, 214] as const;
const AIR = '#6b6a63';
const RING = '#94371c';

/** A recording laid out for replay: where each stretch lies, how fast it was, when. */
export class ReplayPath {
  readonly seconds: number;
  private readonly ink: InkDocument;
  private readonly startMs: number;
  private readonly fastest: number;
  private readonly box: { left: number; top: number; width: number; height: number };
  private readonly stops: readonly { fromS: number; toS: number }[];

  constructor(ink: InkDocument, stops: readonly { fromS: number; toS: number }[]) {
    this.ink = ink;
    this.stops = stops;
    const downs = ink.traces.filter(({ kind, x }) => kind === 'down' && x.length > 0);
    this.startMs = downs[0]?.t?.[0] ?? 0;
    const last = downs.at(-1)?.t;
    this.seconds = last ? Math.max(0, (last[last.length - 1]! - this.startMs) / 1000) : 0;
    const [xs, ys] = [downs.flatMap(({ x }) => [...x]), downs.flatMap(({ y }) => [...y])];
    const low = (values: readonly number[]): number => values.reduce((least, each) => Math.min(least, each), Infinity);
    const high = (values: readonly number[]): number => values.reduce((most, each) => Math.max(most, each), -Infinity);
    this.box = { left: low(xs), top: low(ys), width: high(xs) - low(xs) || 1, height: high(ys) - low(ys) || 1 };
    const speeds = downs.flatMap((trace) => this.speedsOf(trace)).sort((a, b) => a - b);
    this.fastest = speeds[Math.floor(speeds.length * 0.95)] || 1;
  }

  private speedsOf({ x, y, t }: InkTrace): number[] {
    if (!t) return [];
    return Array.from({ length: Math.max(0, t.length - 1) }, (_, i) => speedAt(x, y, t, i + 1));
  }

  /** Everything up to `now` (s), fitted into the canvas. */
  draw(context: CanvasRenderingContext2D, width: number, height: number, now: number): void {
    const { left, top } = this.box;
    const scale = Math.min((width - 32) / this.box.width, (height - 32) / this.box.height);
    const [dx, dy] = [(width - this.box.width * scale) / 2, (height - this.box.height * scale) / 2];
    const x = (value: number): number => (value - left) * scale + dx;
    const y = (value: number): number => (value - top) * scale + dy;
    const until = this.startMs + now * 1000 + 1e-6;
    context.clearRect(0, 0, width, height);
    for (const trace of this.ink.traces) {
      const { t } = trace;
      if (t && (t.length === 0 || t[0]! > until)) continue;
      if (trace.kind === 'up') this.drawAir(context, trace, x, y, until);
      else this.drawContact(context, trace, x, y, until);
    }
    context.setLineDash([]);
    context.strokeStyle = RING;
    context.lineWidth = 2;
    for (const { fromS, toS } of this.stops) {
      const place = fromS <= now ? this.placeAt((fromS + toS) / 2) : null;
      if (!place) continue;
      context.beginPath();
      context.arc(x(place.x), y(place.y), 9, 0, 2 * Math.PI);
      context.stroke();
    }
  }

  private drawContact(
    context: CanvasRenderingContext2D,
    { x: xs, y: ys, t }: InkTrace,
    x: (value: number) => number,
    y: (value: number) => number,
    until: number,
  ): void {
    context.setLineDash([]);
    for (let i = 1; i < xs.length && !(t && t[i]! > until); i += 1) {
      const share = t ? Math.min(1, speedAt(xs, ys, t, i) / this.fastest) : 0.5;
      const color = SLOW.map((slow, c) => Math.round(slow + (FAST[c]! - slow) * share));
      context.strokeStyle = `rgb(${color.join(' ')})`;
      context.lineWidth = 3.2 - 1.8 * share;
      context.beginPath();
      context.moveTo(x(xs[i - 1]!), y(ys[i - 1]!));
      context.lineTo(x(xs[i]!), y(ys[i]!));
      context.stroke();
    }
  }

  private drawAir(
    context: CanvasRenderingContext2D,
    { x: xs, y: ys, t }: InkTrace,
    x: (value: number) => number,
    y: (value: number) => number,
    until: number,
  ): void {
    context.setLineDash([4, 4]);
    context.strokeStyle = AIR;
    context.lineWidth = 1;
    context.beginPath();
    for (let i = 0; i < xs.length && !(t && t[i]! > until); i += 1) {
      if (i === 0) context.moveTo(x(xs[i]!), y(ys[i]!));
      else context.lineTo(x(xs[i]!), y(ys[i]!));
    }
    context.stroke();
  }

  private placeAt(seconds: number): { x: number; y: number } | null {
    const at = this.startMs + seconds * 1000;
    for (const { kind, x, y, t } of this.ink.traces) {
      if (kind !== 'down' || !t || t.length === 0 || t[0]! > at || t.at(-1)! < at) continue;
      const i = t.findIndex((time) => time >= at);
      return { x: x[i]!, y: y[i]! };
    }
    return null;
  }
}

/** Units a second between a sample and the one before it. */
function speedAt(x: Float64Array, y: Float64Array, t: Float64Array, i: number): number {
  const seconds = (t[i]! - t[i - 1]!) / 1000;
  return seconds > 0 ? Math.hypot(x[i]! - x[i - 1]!, y[i]! - y[i - 1]!) / seconds : 0;
}
