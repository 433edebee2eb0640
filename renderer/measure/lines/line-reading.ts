import { median } from '../../statistics/order-statistics.ts';
import { baselineOf } from './baseline-fit.ts';
import type { Baseline } from './baseline-fit.ts';
import type { Blob } from '../pieces/ink-pieces.ts';
import type { InkMap } from '../pieces/run-map.ts';
import { extentAlong } from '../pieces/run-map.ts';
import type { Extreme } from './extremes.ts';
import type { Frame } from './frame.ts';
import {
  adjustedTrend,
  nearOnes,
  sizeAt,
  sizeTrend,
  togetherTrends,
  usualHeight,
  withoutJoins,
} from './letter-tops.ts';
import { topsOf } from './line-tops.ts';
import { FLAT, JOINED_WIDTH } from './line-work.ts';
import type { LineBlob, LineWork } from './line-work.ts';
import { modeOf } from './density-peak.ts';
import type { Trace } from './trace.ts';
import { traceAt, traceEnd } from './trace.ts';

/** The middle of a line's ink lies this many x-heights above the baseline (bodies, with taller than hanging parts). */
const MIDDLE = 0.62;
/** Ink further than this many x-heights from every line's middle is no part of a line. */
const STRAY = 2.4;

/** Lines before and after one that tell its usual size. */
const AROUND = 3;
/** A line is looked at again when its size differs by more than this (ln) from them, for tops within the second of them. */
const UNLIKE = 0.18;
const LIKE = 0.12;
/** So many tops, and this share of those that it was read by, are its small letters then: more if they are the taller. */
const LEAST_NEAR = 2;
const SHARE_LOWER = 0.3;
const SHARE_TALLER = 1;

/**
 * Baselines and sizes of all lines, then which ink belongs to which.
 * @param lists the extremes of each blob
 */
export function readLines(
  traces: readonly Trace[],
  blobs: readonly Blob[],
  extremes: readonly Extreme[],
  lists: readonly Extreme[][],
  map: InkMap,
  frame: Frame,
  roughXHeight: number,
): LineWork[] {
  const near = extremes.map((extreme) => nearest(traces, extreme, 1.6 * roughXHeight));
  const bottoms: Extreme[][] = traces.map(() => []);
  const offsets: number[] = [];
  extremes.forEach((e, i) => {
    if (e.kind !== 'bottom' || near[i]! < 0 || isFlat(blobs[e.blob]!, roughXHeight)) return;
    bottoms[near[i]!]!.push(e);
    offsets.push(e.v - traceAt(traces[near[i]!]!, e.u));
  });
  const joined = (bottom: Extreme): boolean => isJoined(blobs[bottom.blob]!, roughXHeight);
  const offset = modeOf(offsets, -0.5 * roughXHeight, 1.6 * roughXHeight, 0.1 * roughXHeight) ?? 0.4 * roughXHeight;
  const found = traces
    .map((trace, i) => ({ trace, baseline: baselineOf(trace, bottoms[i]!, offset, roughXHeight, joined) }))
    .filter((line): line is { trace: Trace; baseline: Baseline } => line.baseline !== null);
  const owners = assign(found, blobs, map, frame, roughXHeight);
  const lines = found
    .map((line, i) => ({ ...line, blobs: ownBlobs(line.baseline, blobs, owners, i, map, frame) }))
    .filter((line) => line.blobs.length > 0);
  const usual = usualHeight(
    lines.flatMap((line) => topsOf(line.blobs, line.baseline, lists, roughXHeight).map((top) => top.height)),
    roughXHeight,
  );
  const read = lines.map((line) => sized(line, lists, usual));
  return ofOneHand(
    read.map((line, i) => likeItsNeighbors(line, read, i, lists)),
    lists,
  );
}

/** A line is read again when its size is elsewhere by more than this (ln) for its page. */
const ELSEWHERE = 0.02;

/**
 * Lines read again where the course of their size is not that of the page: a line with few clear tops mostly found its
 * size and its change of size among the tops of joins and tall letters.
 */
function ofOneHand(lines: LineWork[], lists: readonly Extreme[][]): LineWork[] {
  const courses = togetherTrends(lines);
  if (!courses) return lines;
  return lines.map((line, i) => {
    const { blobs, baseline, trend } = line;
    const course = courses[i]!;
    const off = (u: number): number => Math.abs(Math.log(sizeAt(course, u) / sizeAt(trend, u)));
    if (Math.max(off(blobs[0]!.blob.u0), off(blobs[blobs.length - 1]!.blob.u1)) < ELSEWHERE) return line;
    const tops = withoutJoins(
      topsOf(blobs, baseline, lists, (u) => sizeAt(course, u)),
      course,
    );
    return { ...line, tops, trend: adjustedTrend(tops, course) };
  });
}

/**
 * A line whose size is far from that of the lines around it was mostly read by its tall letters, its joins or its
 * capitals: where enough of its tops have their neighbors' height, those are its small letters.
 */
function likeItsNeighbors(
  line: LineWork,
  lines: readonly LineWork[],
  at: number,
  lists: readonly Extreme[][],
): LineWork {
  const around = lines.slice(Math.max(0, at - AROUND), at + AROUND + 1).filter((other) => other !== line);
  const usual = median(around.map(lineSize));
  if (usual === null || around.length < AROUND || Math.abs(Math.log(lineSize(line) / usual)) < UNLIKE) return line;
  const other = sized(line, lists, usual, { below: LIKE, above: LIKE });
  const near = nearOnes(other.tops, other.trend).length;
  const share = usual < lineSize(line) ? SHARE_LOWER : SHARE_TALLER;
  return near >= LEAST_NEAR && near > share * nearOnes(line.tops, line.trend).length ? other : line;
}

/** A line with its tops and the course of its size. */
export function sized(
  line: Omit<LineWork, 'trend' | 'tops'>,
  lists: readonly Extreme[][],
  xHeight: number,
  sought?: { below: number; above: number },
): LineWork {
  const rough = sizeTrend(topsOf(line.blobs, line.baseline, lists, xHeight), xHeight, sought);
  // Where a line shrinks or grows, what is one letter and what are several follows its size.
  const all = topsOf(line.blobs, line.baseline, lists, (u) => sizeAt(rough, u));
  const tops = withoutJoins(all, adjustedTrend(all, rough));
  return { ...line, tops, trend: adjustedTrend(tops, rough) };
}

/** Whether a piece of ink holds several letters. */
export function isJoined(blob: Blob, xHeight: number): boolean {
  return blob.u1 - blob.u0 > JOINED_WIDTH * xHeight;
}

/** Points, commas and bars have no bottom: they float a little above the line, or hang from it. */
export function isFlat(blob: Blob, xHeight: number): boolean {
  return blob.v1 - blob.v0 < FLAT * xHeight;
}

function nearest(traces: readonly Trace[], extreme: Extreme, reach: number): number {
  let best = -1;
  let least = reach;
  for (let i = 0; i < traces.length; i += 1) {
    const trace = traces[i]!;
    // A course ends where its ink ends; a little beyond is allowed for.
    if (extreme.u < trace.u0 - 4 * reach || extreme.u > traceEnd(trace) + 4 * reach) continue;
    const distance = Math.abs(extreme.v - traceAt(trace, extreme.u));
    if (distance < least) {
      least = distance;
      best = i;
    }
  }
  return best;
}

/** Line of each blob, -1 for stray ink. */
function assign(
  lines: readonly { baseline: Baseline }[],
  blobs: readonly Blob[],
  map: InkMap,
  frame: Frame,
  xHeight: number,
): Int32Array {
  const owners = new Int32Array(blobs.length).fill(-1);
  blobs.forEach((blob, index) => {
    const u = (blob.u0 + blob.u1) / 2;
    const v = inkMiddle(blob, map, frame);
    let least = STRAY * xHeight;
    for (let i = 0; i < lines.length; i += 1) {
      const distance = Math.abs(v - (traceAt(lines[i]!.baseline.curve, u) - MIDDLE * xHeight));
      if (distance < least) {
        least = distance;
        owners[index] = i;
      }
    }
  });
  return owners;
}

/** Mean `v` of a blob's ink. */
function inkMiddle(blob: Blob, map: InkMap, frame: Frame): number {
  let sum = 0;
  let weight = 0;
  for (let i = blob.firstRun; i < blob.firstRun + blob.runCount; i += 1) {
    const length = map.to[i]! - map.from[i]!;
    const x = (map.to[i]! + map.from[i]!) / 2;
    sum += length * ((x - frame.originX) * frame.sin + (map.row[i]! + 0.5 - frame.originY) * frame.cos);
    weight += length;
  }
  return sum / weight;
}

function ownBlobs(
  baseline: Baseline,
  blobs: readonly Blob[],
  owners: Int32Array,
  line: number,
  map: InkMap,
  frame: Frame,
): LineBlob[] {
  // The baseline's own direction in the picture: the page's turn plus the line's rise on the page.
  const direction = frame.angle - Math.atan(baseline.straight.slope);
  const own: LineBlob[] = [];
  blobs.forEach((blob, index) => {
    if (owners[index] !== line) return;
    const { from, to } = extentAlong(blob, map, direction, frame.originX, frame.originY);
    own.push({ blob, index, from, to });
  });
  return own.sort((a, b) => a.from - b.from);
}

/** x-height of the line in its middle, pixels. */
export function lineSize(line: LineWork): number {
  const middle = median(line.blobs.map((b) => (b.from + b.to) / 2))!;
  return sizeAt(line.trend, middle);
}
