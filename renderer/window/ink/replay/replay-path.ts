import { speedAt, type ReplayLayout } from './replay-layout.ts';

/** Slow to fast: the ink's own blue to a light one, 3:1 on the paper at its lightest. */
const SLOW = [26, 36, 64] as const;
const FAST = [94, 138, 214] as const;
const AIR = '#6b6a63';
const RING = '#94371c';
/** How long is drawn at one go; more follows in the next frame. So many segments between two looks at the clock. */
const AT_ONE_GO_MS = 8;
const SEGMENTS = 400;
/** Colors from slow to fast, made once. */
const COLORS = Array.from({ length: 65 }, (_, i) => {
  const color = SLOW.map((slow, c) => Math.round(slow + (FAST[c]! - slow) * (i / 64)));
  return `rgb(${color.join(' ')})`;
});
const MARGIN_PX = 32;

type Span = { fromS: number; toS: number };
interface Place {
  x: number;
  y: number;
}

/** A recording laid out for replay: where each stretch lies, how fast it was, when. */
export class ReplayPath {
  readonly seconds: number;
  private readonly layout: ReplayLayout;
  private readonly marks: { at: number; isStop: boolean; place: Place }[];
  /** How far the canvas shows it: next trace, next sample in it. */
  private cursor = { trace: 0, sample: 0 };
  private drawn: { context: CanvasRenderingContext2D; width: number; height: number; now: number } | null = null;

  constructor(layout: ReplayLayout, stops: readonly Span[], pauses: readonly Span[]) {
    this.layout = layout;
    this.seconds = layout.seconds;
    const placed = (isStop: boolean) => (span: Span) => {
      const place = this.placeAt((span.fromS + span.toS) / 2);
      return place ? [{ at: span.fromS, isStop, place }] : [];
    };
    // A long stop is a pause too: it is ringed, not marked twice.
    const short = pauses.filter(({ fromS, toS }) => !stops.some((stop) => stop.fromS <= toS && stop.toS >= fromS));
    this.marks = [...stops.flatMap(placed(true)), ...short.flatMap(placed(false))];
  }

  /**
   * Draws on up to `now` (s), fitted into the canvas; going back begins anew.
   * @returns whether all of it stands; if not, call again in the next frame
   */
  draw(context: CanvasRenderingContext2D, width: number, height: number, now: number): boolean {
    const { drawn } = this;
    const goesOn = drawn?.context === context && drawn.width === width && drawn.height === height && drawn.now <= now;
    if (!goesOn) {
      context.clearRect(0, 0, width, height);
      this.cursor = { trace: 0, sample: 0 };
    }
    this.drawn = { context, width, height, now };
    const place = this.fitted(width, height);
    const until = this.layout.startMs + now * 1000 + 1e-6;
    const began = performance.now();
    let left = SEGMENTS;
    while (this.cursor.trace < this.layout.traces.length) {
      if (left <= 0) {
        if (performance.now() - began > AT_ONE_GO_MS) return false;
        left = SEGMENTS;
      }
      const before = this.cursor.sample;
      if (!this.drawTrace(context, place, until, left)) break;
      left -= Math.max(1, this.cursor.sample - before);
      if (this.cursor.sample < this.layout.traces[this.cursor.trace]!.x.length) continue;
      this.cursor = { trace: this.cursor.trace + 1, sample: 0 };
    }
    this.mark(context, place, now);
    return true;
  }

  private fitted(width: number, height: number): (at: Place) => Place {
    const { box } = this.layout;
    const scale = Math.min((width - MARGIN_PX) / box.width, (height - MARGIN_PX) / box.height);
    const [dx, dy] = [(width - box.width * scale) / 2, (height - box.height * scale) / 2];
    return ({ x, y }) => ({ x: (x - box.left) * scale + dx, y: (y - box.top) * scale + dy });
  }

  /** Goes on in the trace at the cursor, by so many samples at most. @returns false where `until` ends it */
  private drawTrace(
    context: CanvasRenderingContext2D,
    place: (at: Place) => Place,
    until: number,
    most: number,
  ): boolean {
    const { kind, x, y, t } = this.layout.traces[this.cursor.trace]!;
    const isAir = kind === 'up';
    context.setLineDash(isAir ? [4, 4] : []);
    let i = this.cursor.sample;
    const end = Math.min(x.length, i + most);
    for (; i < end; i += 1) {
      if (t && t[i]! > until) {
        this.cursor.sample = i;
        return false;
      }
      if (i === 0) continue;
      const share = t ? Math.min(1, speedAt(x, y, t, i) / this.layout.fastest) : 0.5;
      context.strokeStyle = isAir ? AIR : COLORS[Math.round(64 * share)]!;
      context.lineWidth = isAir ? 1 : 3.2 - 1.8 * share;
      const [from, to] = [place({ x: x[i - 1]!, y: y[i - 1]! }), place({ x: x[i]!, y: y[i]! })];
      context.beginPath();
      context.moveTo(from.x, from.y);
      context.lineTo(to.x, to.y);
      context.stroke();
    }
    this.cursor.sample = i;
    return true;
  }

  /** Rings where the pen stopped long, squares where it paused, so far. */
  private mark(context: CanvasRenderingContext2D, place: (at: Place) => Place, now: number): void {
    context.setLineDash([]);
    context.strokeStyle = RING;
    context.lineWidth = 2;
    for (const { place: at, at: second, isStop } of this.marks) {
      if (second > now) continue;
      const { x, y } = place(at);
      context.beginPath();
      if (isStop) context.arc(x, y, 9, 0, 2 * Math.PI);
      else context.rect(x - 4, y - 4, 8, 8);
      context.stroke();
    }
  }

  private placeAt(seconds: number): Place | null {
    const at = this.layout.startMs + seconds * 1000;
    let last: Place | null = null;
    for (const { kind, x, y, t } of this.layout.traces) {
      if (kind !== 'down' || !t || t.length === 0) continue;
      // In the air: where it was lifted.
      if (t[0]! > at) return last;
      last = { x: x.at(-1)!, y: y.at(-1)! };
      if (t.at(-1)! < at) continue;
      const i = t.findIndex((time) => time >= at);
      return { x: x[i]!, y: y[i]! };
    }
    return null;
  }
}
