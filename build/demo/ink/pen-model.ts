/**
 * A pen that moves as it is told: strokes by a known speed law, rests, lifts, a tremor on top. From one plan come the
 * ink at any rate of samples, with the scatter of a device, and the truth to hold measures against. Invented motion.
 */
import type { InkDocument, InkTask, InkTrace } from '../../../renderer/ink/index.ts';
import { seededRandom } from '../../letters/random.ts';

/** mm and s. y runs down. */
export type PenStep =
  | { kind: 'stroke'; dx: number; dy: number; seconds: number; law?: 'min-jerk' | 'sine' }
  | { kind: 'rest'; seconds: number }
  | { kind: 'lift'; dx: number; dy: number; seconds: number };

export interface PenPlan {
  task: InkTask;
  text?: string;
  from: { x: number; y: number };
  steps: PenStep[];
  /** Words as numbers of contacts, from 0. */
  words?: number[][];
  /** A sine on the path, along y. */
  tremor?: { hz: number; amplitudeMm: number };
  /** Pressure at a time in s, 0 to 1. */
  pressure?: (seconds: number) => number;
}

export interface PenDevice {
  rateHz: number;
  /** Scatter of each axis, mm. */
  noiseMm: number;
  /** Scatter of the time between samples, ms. */
  jitterMs?: number;
  seed: number;
  hover?: boolean;
}

/** Minimum jerk (Flash & Hogan 1985): its peak speed is 1.875 times its mean. */
const minimumJerk = (share: number): number => share ** 3 * (10 - 15 * share + 6 * share ** 2);
const halfSine = (share: number): number => (1 - Math.cos(Math.PI * share)) / 2;

interface Place {
  x: number;
  y: number;
  down: boolean;
}

/** Where the pen is at each time, before device and tremor. */
export class PenPath {
  readonly seconds: number;
  private readonly starts: { at: number; x: number; y: number; step: PenStep }[] = [];
  private readonly plan: PenPlan;

  constructor(plan: PenPlan) {
    this.plan = plan;
    let [at, x, y] = [0, plan.from.x, plan.from.y];
    for (const step of plan.steps) {
      this.starts.push({ at, x, y, step });
      at += step.seconds;
      if (step.kind !== 'rest') [x, y] = [x + step.dx, y + step.dy];
    }
    this.seconds = at;
  }

  at(seconds: number): Place {
    let [low, high] = [0, this.starts.length - 1];
    while (low < high) {
      const middle = (low + high + 1) >> 1;
      if (this.starts[middle]!.at <= seconds + 1e-12) low = middle;
      else high = middle - 1;
    }
    const { at, x, y, step } = this.starts[low]!;
    const share = Math.min(1, Math.max(0, (seconds - at) / step.seconds));
    const { tremor } = this.plan;
    const shake = tremor ? tremor.amplitudeMm * Math.sin(2 * Math.PI * tremor.hz * seconds) : 0;
    if (step.kind === 'rest') return { x, y: y + shake, down: true };
    const way = step.kind === 'stroke' && step.law === 'sine' ? halfSine(share) : minimumJerk(share);
    return { x: x + step.dx * way, y: y + step.dy * way + shake, down: step.kind !== 'lift' };
  }
}

/** The ink that a device makes of a plan. Samples begin a little after the pen does, as clocks do not agree. */
export function inkOf(plan: PenPlan, device: PenDevice): InkDocument {
  const random = seededRandom(device.seed);
  const normal = (): number => random.normal();
  const path = new PenPath(plan);
  const interval = 1000 / device.rateHz;
  const jitter = device.jitterMs ?? 0;
  const traces: InkTrace[] = [];
  const contacts: number[] = [];
  let open: { down: boolean; x: number[]; y: number[]; t: number[]; force: number[] } | null = null;
  const close = (): void => {
    if (!open) return;
    const { down } = open;
    if (down) contacts.push(traces.length);
    if (down || device.hover !== false) {
      const [x, y, t, force] = [open.x, open.y, open.t, open.force].map((list) => Float64Array.from(list));
      const none = { tiltX: null, tiltY: null, rotation: null };
      traces.push({ kind: down ? 'down' : 'up', x: x!, y: y!, t: t!, force: plan.pressure ? force! : null, ...none });
    }
    open = null;
  };
  const offset = random.next() * interval;
  const count = Math.floor((path.seconds * 1000 - offset) / interval - 1e-9) + 1;
  for (let i = 0; i < count; i += 1) {
    const clock = offset + i * interval;
    const place = path.at(clock / 1000);
    if (open && open.down !== place.down) close();
    open ??= { down: place.down, x: [], y: [], t: [], force: [] };
    open.x.push(place.x + device.noiseMm * normal());
    open.y.push(place.y + device.noiseMm * normal());
    open.t.push(200 + clock + Math.max(-0.4 * interval, Math.min(0.4 * interval, jitter * normal())));
    open.force.push(place.down ? (plan.pressure?.(clock / 1000) ?? 0) : 0);
  }
  close();
  const words = (plan.words ?? []).map((word) => word.map((n) => contacts[n]!));
  return {
    traces,
    lines: words.length > 0 ? [words.flat()] : [],
    words,
    task: plan.task,
    text: plan.text ?? null,
    startedAtMs: 1_760_000_000_000,
    calibrated: true,
    forceIsShare: true,
  };
}

/** Strokes up and down, each as high as `heightMm` tells for its number; they lean a little to the right. */
export function strokesUpAndDown(
  count: number,
  heightMm: (n: number) => number,
  seconds: number,
  law: 'min-jerk' | 'sine' = 'min-jerk',
): PenStep[] {
  return Array.from({ length: count }, (_, n) => {
    const height = heightMm(n);
    return { kind: 'stroke', dx: 0.2 * height, dy: n % 2 === 0 ? -height : height, seconds, law };
  });
}
