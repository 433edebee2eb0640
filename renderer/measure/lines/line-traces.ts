import { leastSquares } from '../../statistics/least-squares.ts';
import { median, quantile } from '../../statistics/order-statistics.ts';
import type { Blob } from '../pieces/ink-pieces.ts';
import type { InkMap } from '../pieces/run-map.ts';
import { densityOf, smoothed } from './density.ts';
import type { Density } from './density.ts';
import type { Frame } from './frame.ts';
import type { Trace } from './trace.ts';
import { traceAt, traceEnd } from './trace.ts';

/** Cells of the density map in one x-height across a line: fine enough to follow it to a tenth of a letter. */
const CELLS_ACROSS = 5;
/** … and along it, where it is smoothed over words. */
const CELLS_ALONG = 2;
/** Smoothing along the line in x-heights: bridges the gaps between words. */
const ALONG = 3;
/** Smoothing across in x-heights: joins the parts of a letter, keeps lines apart down to two x-heights. */
const ACROSS = 0.45;
/** A ridge counts from this share of the usual ridge's height. */
const LEAST_RIDGE = 0.25;
/** Words further apart than this many x-heights still belong to one line if they are level. */
const BRIDGE = 12;
/** How far a ridge may leave its predicted course, in x-heights. */
const TOLERANCE = 0.6;
/** Steepest course of a line (v per u): about 8 degrees. */
const STEEPEST = 0.14;

interface Ridge {
  at: number[];
  height: number[];
  mass: number;
}

/**
 * Courses of the lines of writing: ridges of the smoothed ink density, linked from column to column
 * (after Likforman-Sulem et al. 2007, a survey of line segmentation; from memory).
 * @param xHeight rough x-height in pixels
 */
export function lineTraces(blobs: readonly Blob[], map: InkMap, frame: Frame, xHeight: number): Trace[] {
  const cells = densityOf(blobs, map, frame, Math.max(1, xHeight / CELLS_ALONG), Math.max(1, xHeight / CELLS_ACROSS));
  const density = smoothed(cells, ALONG * CELLS_ALONG, ACROSS * CELLS_ACROSS);
  const ridges = linkRidges(density, ridgePeaks(density));
  const traces = ridges
    .map((ridge) => toTrace(ridge, density))
    .filter((trace): trace is { trace: Trace; mass: number } => trace !== null);
  return keepStrong(traces, xHeight).sort((a, b) => middleOf(a) - middleOf(b));
}

function middleOf(trace: Trace): number {
  return median(trace.v)!;
}

/** Local maxima of each column, refined between cells by a parabola. */
function ridgePeaks(density: Density): { row: number; value: number }[][] {
  const { columns, rows, values } = density;
  const all = Array.from({ length: columns }, (): { row: number; value: number }[] => []);
  const heights: number[] = [];
  // Row by row, as the cells lie in memory.
  for (let r = 1; r + 1 < rows; r += 1)
    for (let c = 0, at = r * columns; c < columns; c += 1, at += 1) {
      const here = values[at]!;
      const above = values[at - columns]!;
      const below = values[at + columns]!;
      if (here <= 0 || here < above || here <= below) continue;
      const curve = above - 2 * here + below;
      all[c]!.push({ row: r + (curve === 0 ? 0 : (above - below) / (2 * curve)), value: here });
      heights.push(here);
    }
  const usual = quantile(heights, 0.75) ?? 0;
  return all.map((column) => column.filter((p) => p.value >= LEAST_RIDGE * usual));
}

function linkRidges(density: Density, columns: { row: number; value: number }[][]): Ridge[] {
  const ridges: Ridge[] = [];
  const reach = BRIDGE * CELLS_ALONG;
  let open: Ridge[] = [];
  columns.forEach((peaksHere, c) => {
    open = open.filter((ridge) => c - ridge.at[ridge.at.length - 1]! <= reach);
    const pairs: { ridge: Ridge; peak: number; distance: number }[] = [];
    for (const ridge of open) {
      const expected = predicted(ridge, c);
      const missed = c - ridge.at[ridge.at.length - 1]! - 1;
      const tolerance = (TOLERANCE + (0.4 * missed) / reach) * CELLS_ACROSS;
      for (let k = 0; k < peaksHere.length; k += 1) {
        const distance = Math.abs(peaksHere[k]!.row - expected);
        if (distance <= tolerance) pairs.push({ ridge, peak: k, distance: distance + missed * 0.01 });
      }
    }
    pairs.sort((a, b) => a.distance - b.distance);
    const taken = new Set<number>();
    const fed = new Set<Ridge>();
    for (const { ridge, peak } of pairs) {
      if (taken.has(peak) || fed.has(ridge)) continue;
      taken.add(peak);
      fed.add(ridge);
      extend(ridge, c, peaksHere[peak]!);
    }
    peaksHere.forEach((peak, k) => {
      if (taken.has(k)) return;
      const ridge: Ridge = { at: [], height: [], mass: 0 };
      extend(ridge, c, peak);
      ridges.push(ridge);
      open.push(ridge);
    });
  });
  return ridges;
}

function extend(ridge: Ridge, column: number, peak: { row: number; value: number }): void {
  ridge.at.push(column);
  ridge.height.push(peak.row);
  ridge.mass += peak.value;
}

/** Where a ridge goes next: its course over the last few x-heights, level when it is short. */
function predicted(ridge: Ridge, column: number): number {
  const n = ridge.at.length;
  const back = Math.max(0, n - 6 * CELLS_ALONG);
  const run = ridge.at[n - 1]! - ridge.at[back]!;
  const slope = run < 2 * CELLS_ALONG ? 0 : (ridge.height[n - 1]! - ridge.height[back]!) / run;
  const steepest = (STEEPEST * CELLS_ACROSS) / CELLS_ALONG;
  const limited = Math.max(-steepest, Math.min(steepest, slope));
  return ridge.height[n - 1]! + limited * (column - ridge.at[n - 1]!);
}

function toTrace(ridge: Ridge, { along, down }: Density): { trace: Trace; mass: number } | null {
  const first = ridge.at[0]!;
  const last = ridge.at[ridge.at.length - 1]!;
  if (last - first < 2) return null;
  const v = new Float64Array(last - first + 1);
  for (let i = 0; i + 1 < ridge.at.length; i += 1) {
    const [a, b] = [ridge.at[i]!, ridge.at[i + 1]!];
    for (let c = a; c <= b; c += 1)
      v[c - first] = (ridge.height[i]! + ((ridge.height[i + 1]! - ridge.height[i]!) * (c - a)) / (b - a) + 0.5) * down;
  }
  const every = Math.max(1, Math.floor(v.length / 60));
  const xs: number[] = [];
  const ys: number[] = [];
  for (let i = 0; i < v.length; i += every) {
    xs.push(i * along);
    ys.push(v[i]!);
  }
  const slope = leastSquares(xs, ys)?.slope ?? 0;
  return { trace: { u0: (first + 0.5) * along, step: along, v, slope }, mass: ridge.mass };
}

/** Drops ridges of ascenders, descenders and dots: weak ones closer than 1.2 x-heights to a stronger one. */
function keepStrong(traces: { trace: Trace; mass: number }[], xHeight: number): Trace[] {
  const kept: { trace: Trace; mass: number }[] = [];
  for (const candidate of [...traces].sort((a, b) => b.mass - a.mass)) {
    const shadowed = kept.some(({ trace, mass }) => {
      const from = Math.max(trace.u0, candidate.trace.u0);
      const to = Math.min(traceEnd(trace), traceEnd(candidate.trace));
      const overlap = to - from;
      if (overlap < 0.5 * (traceEnd(candidate.trace) - candidate.trace.u0)) return false;
      const middle = (from + to) / 2;
      const near = Math.abs(traceAt(trace, middle) - traceAt(candidate.trace, middle)) < 1.2 * xHeight;
      return near && candidate.mass < 0.6 * mass;
    });
    if (!shadowed) kept.push(candidate);
  }
  return kept.map((k) => k.trace);
}
