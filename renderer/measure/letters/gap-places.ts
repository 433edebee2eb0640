import type { InkMap } from '../pieces/run-map.ts';
import type { Frame } from '../lines/frame.ts';
import { uOf, vOf } from '../lines/frame.ts';
import { sizeAt } from '../lines/letter-tops.ts';
import type { LineWork } from '../lines/line-work.ts';
import { strokesOf } from './pen-strokes.ts';
import type { Group } from './word-groups.ts';
import { median } from '../../statistics/order-statistics.ts';

/** A group of ink as the spacing sees it: lengths in x-heights of its line, places taken along the slant. */
export interface Place {
  /** Extent of its ink without what hangs below the line. */
  from: number;
  to: number;
  /** Extent of its ink between the baseline and the small letters' tops; the same as above where it has none there. */
  bodyFrom: number;
  bodyTo: number;
  /** Highest and lowest ink above the baseline. */
  top: number;
  bottom: number;
  /** A point, comma, quotation mark, dot, bar or dash: no letter by itself. */
  mark: 'low' | 'middle' | 'high' | null;
}

/** What reaches lower than this, x-heights, is a tail: it may pass under the next word. */
const TAIL = -0.25;
/** What reaches higher is a bar, flag or ascender: it may pass over the next letter. */
const BODY = 1.25;
/** Upright strokes of this many x-heights tell the slant. */
const LONG_STROKE = 0.7;
/** Fewer strokes than this tell no slant; beyond the last (radians) they are no upright strokes. */
const LEAST_STROKES = 12;
const MOST_SLANT = 0.7;
/** What reaches no higher stands on the line or hangs from it. */
const LOW = 0.55;
/** Marks, x-heights: dots and short dashes, bars, commas and quotation marks. */
const DOT = { height: 0.45, width: 0.8 } as const;
const BAR = { height: 0.35, width: 2.5, above: 0.5 } as const;
const COMMA = { width: 0.5, top: 0.8, low: 0.22, bottom: 0.65, high: 1.1, height: 1.1 } as const;

/** Slant of the page's writing (radians from upright, + right): the median of its upright strokes. */
export function pageSlant(lines: readonly LineWork[], map: InkMap, strokePx: number): number {
  const slants: number[] = [];
  for (const line of lines)
    for (const { blob, from } of line.blobs)
      for (const stroke of strokesOf(blob, map, strokePx, LONG_STROKE * sizeAt(line.trend, from)))
        slants.push(stroke.slant);
  if (slants.length < LEAST_STROKES) return 0;
  return Math.max(-MOST_SLANT, Math.min(MOST_SLANT, median(slants)!));
}

/** Where a group of ink lies. @param shear tangent of the slant */
export function placeOf(group: Group, line: LineWork, map: InkMap, frame: Frame, shear: number): Place {
  const { slope, intercept } = line.baseline.straight;
  const cos = Math.cos(Math.atan(slope));
  const around = (group.from + group.to) / 2;
  const size = sizeAt(line.trend, around);
  const middle = alongInXHeights(line, around) / cos;
  const place = {
    from: Infinity,
    to: -Infinity,
    bodyFrom: Infinity,
    bodyTo: -Infinity,
    top: -Infinity,
    bottom: Infinity,
  };
  let [tailFrom, tailTo] = [Infinity, -Infinity];
  for (const { blob } of group.blobs) {
    for (let i = blob.firstRun, end = i + blob.runCount; i < end; i += 1) {
      const y = map.row[i]! + 0.5;
      const u = uOf(frame, map.from[i]!, y);
      const v = vOf(frame, map.from[i]!, y);
      const height = ((intercept + slope * u - v) * cos) / size;
      const left = middle + (u - around) / cos / size - shear * height;
      const right = left + ((map.to[i]! - map.from[i]!) * Math.cos(frame.angle)) / size;
      if (height > place.top) place.top = height;
      if (height < place.bottom) place.bottom = height;
      if (height < TAIL) {
        if (left < tailFrom) tailFrom = left;
        if (right > tailTo) tailTo = right;
        continue;
      }
      if (left < place.from) place.from = left;
      if (right > place.to) place.to = right;
      if (height > BODY) continue;
      if (left < place.bodyFrom) place.bodyFrom = left;
      if (right > place.bodyTo) place.bodyTo = right;
    }
  }
  if (place.from > place.to) [place.from, place.to] = [tailFrom, tailTo];
  if (place.bodyFrom > place.bodyTo) [place.bodyFrom, place.bodyTo] = [place.from, place.to];
  return { ...place, mark: markOf(place) };
}

/** Way along the line to a place in x-heights, whose size may change on the way. */
export function alongInXHeights({ trend }: LineWork, u: number): number {
  const way = trend.slope * (u - trend.u0);
  const far = Math.abs(way) < 1e-9 ? u - trend.u0 : (1 - Math.exp(-way)) / trend.slope;
  return far / Math.exp(trend.level);
}

function markOf({ from, to, top, bottom }: Omit<Place, 'mark'>): Place['mark'] {
  const [wide, high] = [to - from, top - bottom];
  const level = bottom > COMMA.bottom ? 'high' : top < LOW ? 'low' : 'middle';
  if (high < DOT.height && wide < DOT.width) return level;
  if (high < BAR.height && wide < BAR.width && bottom > BAR.above) return level;
  const middle = (top + bottom) / 2;
  if (wide > COMMA.width) return null;
  if (top < COMMA.top && middle < COMMA.low) return 'low';
  if (bottom > COMMA.bottom && middle > COMMA.high && high < COMMA.height) return 'high';
  return null;
}
