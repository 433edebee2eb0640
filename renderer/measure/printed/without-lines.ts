import { median } from '../../statistics/order-statistics.ts';
import type { GrayImage } from '../types.ts';

/** A line printed upright or level on the straight sheet, mm; `width` as it was drawn. */
export interface PrintedLine {
  x1: number;
  y1: number;
  x2: number;
  y2: number;
  width: number;
  /** Pale enough to tell writing that runs along it. */
  pale: boolean;
}

/** So far a line may lie from its place: paper curls, printers shift. */
const SEARCH_MM = 0.9;
/** A piece of line is looked for as one; shorter than a letter is wide, so that writing along it does not lead it astray. */
const PIECE_MM = 6;
/** Kept on each side of the drawn width: blur of print and picture. */
const EDGE_MM = 0.22;
/** And beyond its ends: what shifts a line lengthwise leaves a dot there. */
const END_MM = 0.8;
/** Least fall of gray, as a share of the paper's, at which a piece counts as found. */
const LEAST_FALL = 0.06;
/** What is darker than the line by so much of the paper's gray was written along it. */
const WRITTEN_ON = 0.12;

/**
 * Takes lines out whose place is known. Each cut across the line is filled from what stands on both sides of it, so
 * that a stroke that crosses goes on and the paper closes. In place.
 */
export function withoutLines(image: GrayImage, pxPerMm: number, lines: readonly PrintedLine[]): GrayImage {
  for (const each of lines) {
    const level = Math.abs(each.y2 - each.y1) < Math.abs(each.x2 - each.x1);
    const [from, to] = level ? [each.x1, each.x2] : [each.y1, each.y2];
    const across = (level ? each.y1 + each.y2 : each.x1 + each.x2) / 2;
    const { width, pale } = each;
    erase(image, pxPerMm, { level, from: Math.min(from, to), to: Math.max(from, to), across, width, pale });
  }
  return image;
}

interface Straight {
  level: boolean;
  from: number;
  to: number;
  /** Its place across, mm. */
  across: number;
  width: number;
  pale: boolean;
}

function erase({ width, height, data }: GrayImage, pxPerMm: number, line: Straight): void {
  const [along, over] = line.level ? [1, width] : [width, 1];
  const [longSide, crossSide] = line.level ? [width, height] : [height, width];
  const half = Math.ceil((line.width / 2 + EDGE_MM) * pxPerMm);
  const search = Math.ceil(SEARCH_MM * pxPerMm);
  const reach = half + search + 2;
  const end = END_MM * pxPerMm;
  const first = Math.max(0, Math.floor(line.from * pxPerMm - end));
  const last = Math.min(longSide - 1, Math.ceil(line.to * pxPerMm + end));
  const middle = Math.round(line.across * pxPerMm - 0.5);
  if (middle - reach < 0 || middle + reach >= crossSide) return;
  // Pieces of one length, within the line itself.
  const [begin, close] = [Math.max(0, line.from * pxPerMm), Math.min(longSide, line.to * pxPerMm)];
  const pieces = Math.max(1, Math.round((close - begin) / (PIECE_MM * pxPerMm)));
  const places: Place[] = [];
  for (let n = 0; n < pieces; n += 1) {
    const start = Math.floor(begin + ((close - begin) * n) / pieces);
    const stop = Math.floor(begin + ((close - begin) * (n + 1)) / pieces);
    const found = placeOf(data, { along, over, middle, search, start, stop, half: (line.width / 2) * pxPerMm });
    if (found) places.push({ at: (start + stop) / 2, ...found });
  }
  if (places.length === 0) return;
  const usual = median(places.map(({ off }) => off)) ?? 0;
  const written =
    (median(places.map(({ gray }) => gray)) ?? 0) - WRITTEN_ON * (median(places.map(({ paper }) => paper)) ?? 0);
  // One piece alone may have followed a stroke.
  const sure = places.filter(({ off }) => Math.abs(off - usual) <= 0.5 * pxPerMm);
  for (let at = first; at <= last; at += 1) {
    const center = middle + Math.round(between(sure, at) ?? usual);
    const base = at * along;
    const side = (from: number): number =>
      (data[base + from * over]! + data[base + (from + Math.sign(from - center)) * over]!) / 2;
    const [before, after] = [side(center - half - 1), side(center + half + 1)];
    for (let step = -half; step <= half; step += 1) {
      const px = base + (center + step) * over;
      if (!line.pale || data[px]! >= written)
        data[px] = before + ((after - before) * (step + half + 1)) / (2 * half + 2);
    }
  }
}

interface Place {
  at: number;
  /** From where it was drawn, px. */
  off: number;
  gray: number;
  paper: number;
}

/** Where a piece lies and how dark it is; null where no line is seen. */
function placeOf(
  data: Uint8Array,
  at: { along: number; over: number; middle: number; search: number; start: number; stop: number; half: number },
): Omit<Place, 'at'> | null {
  const most = at.search + Math.ceil(at.half);
  const profile: number[] = [];
  for (let off = -most; off <= most; off += 1) {
    const grays: number[] = [];
    for (let i = at.start; i < at.stop; i += 2) grays.push(data[i * at.along + (at.middle + off) * at.over]!);
    profile.push(median(grays) ?? 255);
  }
  const paper = Math.max(...profile);
  let best: Omit<Place, 'at'> | null = null;
  let darkest = paper * (1 - LEAST_FALL);
  const wide = Math.max(0, Math.round(at.half) - 1);
  for (let off = -at.search; off <= at.search; off += 1) {
    let sum = 0;
    for (let step = -wide; step <= wide; step += 1) sum += profile[most + off + step]!;
    // Of two alike the one nearer to its place.
    const gray = sum / (2 * wide + 1) + 0.002 * paper * Math.abs(off / at.search);
    if (gray < darkest) [best, darkest] = [{ off, gray, paper }, gray];
  }
  return best;
}

/** The course of a line between its pieces. */
function between(places: readonly Place[], at: number): number | null {
  const next = places.findIndex((each) => each.at >= at);
  if (places.length === 0) return null;
  if (next <= 0) return places[next === 0 ? 0 : places.length - 1]!.off;
  const [a, b] = [places[next - 1]!, places[next]!];
  return a.off + ((b.off - a.off) * (at - a.at)) / (b.at - a.at);
}
