/**
 * Pen events of one sheet, kept as they come (Pointer Events 3): raw updates with their coalesced events, never
 * predicted ones. Pieces go to the caseload twice a second; a piece that could not be kept waits for the next try.
 */
import { ask } from '../../../electron/contract/ask.ts';
import type { RawPhase, RawPointer, RawSample } from '../../ink/index.ts';
import { packSamples } from '../../ink/index.ts';
import { say } from '../parts/say.svelte.ts';

const PIECE_MS = 500;
/** The panel is told this often, not at each event. */
const TOLD_MS = 250;

/** Off the sheet this long: a rest, s. Off it this long: a word may have ended, ms. */
const REST_S = 2;
const WORD_MS = 300;
/** A move this long after the one before it is drawn apart: it may belong to another touch, ms. */
const REJOIN_MS = 100;
/** About eight seconds at 240 Hz. */
const MOST_RECENT = 2000;

export interface DrawnPoint {
  x: number;
  y: number;
  pressure: number;
  /** The first of a contact. */
  begins: boolean;
}

const base64 = (bytes: Uint8Array): string => {
  let text = '';
  for (let at = 0; at < bytes.length; at += 8192) text += String.fromCharCode(...bytes.subarray(at, at + 8192));
  return btoa(text);
};

export class PenCapture {
  /** Told to the panel. */
  touching = $state(false);
  rateHz = $state<number | null>(null);
  tiltDeg = $state<number | null>(null);
  pressure = $state<number | null>(null);
  samples = $state(0);
  palmTouches = $state(0);
  cancelled = $state(0);
  otherPens = $state(0);
  pointer = $state<RawPointer | null>(null);
  problem = $state('');
  /** Pen down and up of the last half minute, s from the first sample. */
  contacts = $state.raw<{ from: number; to: number }[]>([]);
  /** Rests of the pen off the sheet: how many, and the longest, s. */
  rests = $state.raw<{ count: number; longestS: number }>({ count: 0, longestS: 0 });
  /** Told when the pen has been off the sheet for a moment: a word may have ended. */
  onword: ((recent: readonly RawSample[]) => void) | null = null;
  /** Only the pen writes, unless asked otherwise. */
  allowsFinger = false;

  /** While crosses are tapped nothing is ink. */
  paused = false;

  readonly recordingId: string;
  /** Contact points that the canvas has not drawn yet. */
  toDraw: DrawnPoint[] = [];
  /** Longest work on one event or one frame of drawing, ms; tests and benches read it from the sheet. */
  busiestMs = 0;
  busiest = $state(0);
  firstMs: number | null = null;
  lastMs = 0;
  private pending: RawSample[] = [];
  /** Samples since the last word, for the sizes shown while writing; the oldest go. */
  private recent: RawSample[] = [];
  private wordTimer: ReturnType<typeof setTimeout> | undefined;
  private liftedMs: number | null = null;
  private seq = 0;
  private count = 0;
  private intervals: number[] = [];
  private lastContactMs: number | null = null;
  private active: number | null = null;
  private spans: { from: number; to: number }[] = [];
  private sending: Promise<void> = Promise.resolve();
  private waiting: { seq: number; bytes: string }[] = [];
  private readonly timers: ReturnType<typeof setInterval>[];

  constructor(recordingId: string) {
    this.recordingId = recordingId;
    this.timers = [setInterval(() => this.flush(), PIECE_MS), setInterval(() => this.tell(), TOLD_MS)];
  }

  /** Svelte attachment: listens on the sheet. */
  listen = (sheet: HTMLElement): (() => void) => {
    const moves = 'onpointerrawupdate' in window ? 'pointerrawupdate' : 'pointermove';
    const heard: [string, (event: PointerEvent) => void][] = [
      ['pointerdown', (event) => this.down(event, sheet)],
      [moves, (event) => this.move(event)],
      ['pointerup', (event) => this.end(event, 'up')],
      ['pointercancel', (event) => this.end(event, 'cancel')],
    ];
    for (const [name, hear] of heard) sheet.addEventListener(name, hear as EventListener);
    return () => {
      for (const [name, hear] of heard) sheet.removeEventListener(name, hear as EventListener);
    };
  };

  private accepts(event: PointerEvent): boolean {
    if (this.paused) return false;
    if (event.pointerType === 'pen') return true;
    if (this.pointer === 'pen') return false;
    return this.allowsFinger && (event.pointerType === 'touch' || event.pointerType === 'mouse');
  }

  private down(event: PointerEvent, sheet: HTMLElement): void {
    if (!this.accepts(event)) {
      if (event.pointerType === 'touch') this.palmTouches += 1;
      return;
    }
    if (this.active !== null) {
      this.otherPens += 1;
      return;
    }
    event.preventDefault();
    this.active = event.pointerId;
    this.pointer = event.pointerType as RawPointer;
    try {
      sheet.setPointerCapture(event.pointerId);
    } catch {
      // A pen that left meanwhile: its events come without capture too.
    }
    this.keep(event, 'down');
  }

  private move(event: PointerEvent): void {
    if (!this.accepts(event)) return;
    if (this.active !== null && event.pointerId !== this.active) return;
    const began = performance.now();
    const all = event.getCoalescedEvents?.() ?? [];
    for (const each of all.length > 0 ? all : [event]) this.keep(each, this.active === null ? 'hover' : 'contact');
    this.busiestMs = Math.max(this.busiestMs, performance.now() - began);
  }

  private end(event: PointerEvent, phase: 'up' | 'cancel'): void {
    if (event.pointerId !== this.active) return;
    this.active = null;
    if (phase === 'cancel') this.cancelled += 1;
    this.keep(event, phase);
  }

  private keep(event: PointerEvent, phase: RawPhase): void {
    const pointer = event.pointerType as RawPointer;
    // Hovering before the first touch tells nothing of the writing; moves of a touch may be told before it.
    if (this.firstMs === null && phase === 'hover' && event.buttons === 0) return;
    this.firstMs ??= event.timeStamp;
    this.lastMs = event.timeStamp;
    const { timeStamp, clientX, clientY, pressure, tiltX, tiltY, twist, buttons } = event;
    const { altitudeAngle = 0, azimuthAngle = 0 } = event;
    const position = { timeStamp, clientX, clientY, pressure, tiltX, tiltY, twist };
    const sample = { ...position, altitudeAngle, azimuthAngle, buttons, phase, pointer };
    this.pending.push(sample);
    this.count += 1;
    if (this.onword && phase !== 'hover') this.noteRecent(sample);
    if (phase === 'down' && this.liftedMs !== null) this.noteRest((timeStamp - this.liftedMs) / 1000);
    if (phase === 'up' || phase === 'cancel') this.liftedMs = timeStamp;
    if (phase === 'down' || phase === 'contact') {
      this.toDraw.push({
        x: clientX,
        y: clientY,
        pressure,
        begins: phase === 'down' || timeStamp - (this.lastContactMs ?? timeStamp) > REJOIN_MS,
      });
      const atS = (timeStamp - this.firstMs) / 1000;
      if (phase === 'down') this.spans.push({ from: atS, to: atS });
      else {
        this.spans.at(-1)!.to = atS;
        if (this.lastContactMs !== null) this.intervals.push(timeStamp - this.lastContactMs);
        if (this.intervals.length > 240) this.intervals.splice(0, 120);
      }
      this.lastContactMs = timeStamp;
    } else this.lastContactMs = null;
  }

  private noteRest(seconds: number): void {
    if (seconds < REST_S) return;
    this.rests = { count: this.rests.count + 1, longestS: Math.max(this.rests.longestS, seconds) };
  }

  /** Keeps the last strokes at hand; told on once the pen has been lifted for a moment, never while it writes. */
  private noteRecent(sample: RawSample): void {
    this.recent.push(sample);
    if (this.recent.length > MOST_RECENT) this.recent.splice(0, MOST_RECENT / 2);
    clearTimeout(this.wordTimer);
    if (sample.phase === 'up') this.wordTimer = setTimeout(() => this.onword?.(this.recent), WORD_MS);
  }

  private tell(): void {
    this.touching = this.active !== null;
    this.samples = this.count;
    this.busiest = this.busiestMs;
    const sorted = [...this.intervals].sort((a, b) => a - b);
    const middle = sorted[sorted.length >> 1];
    this.rateHz = middle ? 1000 / middle : null;
    const last = this.pending.at(-1);
    if (last) {
      this.tiltDeg = last.tiltX || last.tiltY ? Math.round(Math.hypot(last.tiltX, last.tiltY)) : null;
      this.pressure = last.pressure;
    }
    const from = this.firstMs === null ? 0 : (performance.now() - this.firstMs) / 1000 - 30;
    this.spans = this.spans.filter(({ to }) => to >= from);
    this.contacts = this.spans.map((span) => ({ ...span }));
  }

  /** Hands on what came since the last time. */
  flush(): void {
    if (this.pending.length > 0) {
      this.waiting.push({ seq: this.seq, bytes: base64(packSamples(this.pending)) });
      this.seq += 1;
      this.pending = [];
    }
    this.sending = this.sending.then(() => this.send());
  }

  private async send(): Promise<void> {
    while (this.waiting.length > 0) {
      try {
        await ask('ink.append', { recordingId: this.recordingId, ...this.waiting[0]! });
        this.waiting.shift();
        this.problem = '';
      } catch {
        this.problem = say.ink.lastSecondsAreNot;
        return;
      }
    }
  }

  /** Everything is with the caseload. @throws when it could not be kept */
  async finished(): Promise<void> {
    this.stop();
    this.flush();
    await this.sending;
    if (this.waiting.length > 0) {
      await this.send();
      if (this.waiting.length > 0) throw new Error(say.ink.notKept);
    }
  }

  stop(): void {
    for (const timer of this.timers) clearInterval(timer);
    clearTimeout(this.wordTimer);
  }
}
