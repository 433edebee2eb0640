import { medianInterval } from '../../statistics/median-interval.ts';
import { median } from '../../statistics/order-statistics.ts';
import type { InkMeasure, InkReason } from '../ink-types.ts';
import { INK_METHOD } from '../version.ts';
import type { LogTrend } from './trends.ts';

/** Every measure of ink with its unit, in the order in which it is told. */
export const INK_UNITS = {
  'writing-time': 's',
  'paper-time': 's',
  'air-time': 's',
  'air-share': '%',
  lifts: 'count',
  'lifts-per-word': '1',
  pauses: 'count',
  'pause-time': 's',
  stops: 'count',
  'stop-time': 's',
  'letters-per-minute': '1/min',
  'path-length': 'mm',
  'speed-mean': 'mm/s',
  'speed-peak': 'mm/s',
  strokes: 'count',
  'stroke-height': 'mm',
  'stroke-duration': 's',
  'stroke-peak-speed': 'mm/s',
  'stroke-height-cv': '%',
  'velocity-peaks': '1',
  sparc: '1',
  ldlj: '1',
  'pressure-mean': '1',
  'pressure-cv': '%',
  'pressure-drift': '%/min',
  'size-decrement': '%/10 strokes',
  'speed-decrement': '%/10 strokes',
  'size-drift': '%/min',
  'first-last-five': '%',
  'power-law': '1',
} as const;

export type InkCode = keyof typeof INK_UNITS;
export const INK_CODES = Object.keys(INK_UNITS) as InkCode[];

/** The rows of one recording: a value, or null with its reason. A code that nothing was said about stays null: few. */
export class MeasureRows {
  private readonly rows = new Map<InkCode, InkMeasure>();

  set(code: InkCode, value: number | null, n: number, low: number | null = null, high: number | null = null): void {
    if (value === null || !Number.isFinite(value)) return this.leave([code], 'few');
    const row = { code, value, unit: INK_UNITS[code], n, low, high, method: INK_METHOD };
    this.rows.set(code, { ...row, reliable: true, why: null });
  }

  median(code: InkCode, values: ArrayLike<number>): void {
    const interval = medianInterval(values);
    this.set(code, median(values), values.length, interval?.low, interval?.high);
  }

  trend(code: InkCode, trend: LogTrend | null, n: number): void {
    this.set(code, trend?.percent ?? null, n, trend?.interval?.low, trend?.interval?.high);
  }

  /** Null, for this reason; the first reason stays. */
  leave(codes: readonly InkCode[], why: InkReason): void {
    for (const code of codes) {
      if (this.rows.get(code)?.value === null) continue;
      const row = { code, value: null, unit: INK_UNITS[code], n: 0, low: null, high: null, method: INK_METHOD };
      this.rows.set(code, { ...row, reliable: false, why });
    }
  }

  /** Told, but not to be relied on. */
  doubt(codes: readonly InkCode[], why: InkReason): void {
    for (const code of codes) {
      const row = this.rows.get(code);
      if (row?.value != null) this.rows.set(code, { ...row, reliable: false, why });
    }
  }

  all(): InkMeasure[] {
    this.leave(
      INK_CODES.filter((code) => !this.rows.has(code)),
      'few',
    );
    return INK_CODES.map((code) => this.rows.get(code)!);
  }
}
