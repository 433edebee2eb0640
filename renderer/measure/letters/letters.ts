import type { Hole } from '../image/holes.ts';
import { alignLetters } from './align-letters.ts';
import { BOWL, CLOSING, LETTER_SPACE, usualWidth } from './letter-kinds.ts';
import type { InkMap } from '../pieces/run-map.ts';
import { uOf, vOf } from '../lines/frame.ts';
import type { Frame } from '../lines/frame.ts';
import { sizeAt } from '../lines/letter-tops.ts';
import type { LineBlob, LineWork } from '../lines/line-work.ts';
import { traceAt } from '../lines/trace.ts';
import type { Group, WordWork } from './word-groups.ts';

/** A letter of a word, or letters that touch where the text is not known. Page pixels. */
export interface LetterWork {
  char: string | null;
  u0: number;
  u1: number;
  v0: number;
  v1: number;
  /** Heights above the baseline of its highest and lowest ink. */
  top: number;
  bottom: number;
  loops: number;
  /** How many letters it stands for when the text is not known. */
  count: number;
}

/** A cut between touching letters may move this far (x-heights) to the thinnest place. */
const CUT_REACH = 0.22;

/** What a cut through a bowl costs, as a share of the x-height in ink. */
const BOWL_PRICE = 0.5;

const NO_HOLES: readonly Hole[] = [];
/** A loop this far (x-heights) beyond the cut belongs to a letter that has one, where the letter it lies in has none. */
const LOOP_REACH = 0.4;
/** Letters with a loop between baseline and x-height. */
const LOOPED = `${CLOSING}e`;

/** How far some ink reaches above and below the baseline, pixels. */
interface Reach {
  top: number;
  bottom: number;
}

/**
 * Letters of a word. With its text, the pieces of ink are aligned with the letters and touching letters are cut apart.
 * @param size x-height here, pixels
 * @param widths widths of this hand by letter, x-heights
 */
export function lettersOf(
  word: WordWork,
  line: LineWork,
  text: string | null,
  size: number,
  holesByBlob: ReadonlyMap<number, readonly Hole[]>,
  map: InkMap,
  frame: Frame,
  widths: (char: string) => number = usualWidth,
): LetterWork[] {
  if (text !== null) {
    const pieces = word.groups.map((group) => {
      const { top, bottom } = reachOf(group.blobs, -Infinity, Infinity, line, frame);
      const bowls = bowlsIn(group, line, holesByBlob, frame).length;
      return { width: (group.to - group.from) / size, top: top / size, bottom: -bottom / size, bowls };
    });
    const matches = alignLetters(pieces, text, widths);
    if (matches) {
      const chars = [...text];
      return matches.flatMap((match) => {
        const groups = word.groups.slice(match.from, match.to);
        const own = chars.slice(match.first, match.last);
        if (own.length === 1) return [letterOf(groups, line, own[0]!, null, holesByBlob, frame)];
        const ranges = cutsOf(groups[0]!, own, size, widths, map, bowlsIn(groups[0]!, line, holesByBlob, frame));
        const loops = loopRanges(ranges, own, LOOP_REACH * size);
        return ranges.map((range, k) => letterOf(groups, line, own[k]!, range, holesByBlob, frame, loops[k]!));
      });
    }
  }
  return word.groups.map((group) => {
    const letter = letterOf([group], line, null, null, holesByBlob, frame);
    return {
      ...letter,
      count: Math.max(1, Math.round((group.to - group.from) / size / (usualWidth('n') + LETTER_SPACE))),
    };
  });
}

/** Highest and lowest ink above the baseline between two picture columns. */
function reachOf(own: readonly LineBlob[], left: number, right: number, line: LineWork, frame: Frame): Reach {
  const cos = Math.cos(Math.atan(line.baseline.straight.slope));
  const { curve } = line.baseline;
  let top = -Infinity;
  let bottom = Infinity;
  for (const { blob } of own) {
    const y = (blob.top + blob.bottom) / 2;
    const end = Math.min(right, blob.right) - blob.left;
    for (let k = Math.max(left - blob.left, 0); k < end; k += 1) {
      const base = traceAt(curve, uOf(frame, blob.left + k + 0.5, y));
      const high = (base - blob.upper[k]!) * cos;
      const low = (base - blob.lower[k]!) * cos;
      if (high > top) top = high;
      if (low < bottom) bottom = low;
    }
  }
  return { top, bottom };
}

/** Pixels of ink in each column of a group. */
function inkByColumn(group: Group, left: number, right: number, map: InkMap): Int32Array {
  const ink = new Int32Array(right - left);
  for (const { blob } of group.blobs)
    for (let i = blob.firstRun; i < blob.firstRun + blob.runCount; i += 1)
      for (let x = map.from[i]! - left, to = map.to[i]! - left; x < to; x += 1) ink[x] = ink[x]! + 1;
  return ink;
}

/** First picture column of a group's ink, and the one after its last. */
function columnsOf(group: Group): [number, number] {
  let [left, right] = [Infinity, -Infinity];
  for (const { blob } of group.blobs) {
    left = Math.min(left, blob.left);
    right = Math.max(right, blob.right);
  }
  return [left, right];
}

/** Column ranges of touching letters: by their usual widths, moved to the thinnest place nearby. */
function cutsOf(
  group: Group,
  chars: readonly string[],
  size: number,
  widths: (char: string) => number,
  map: InkMap,
  bowls: readonly Hole[],
): [number, number][] {
  const [left, right] = columnsOf(group);
  const ink = inkByColumn(group, left, right, map);
  // Two letters never share a bowl.
  for (const bowl of bowls)
    for (let x = bowl.left; x < bowl.right; x += 1) ink[x - left]! += Math.round(BOWL_PRICE * size);
  const expected = chars.map((char) => widths(char) + LETTER_SPACE / 2);
  const total = expected.reduce((a, b) => a + b, 0);
  const reach = Math.round(CUT_REACH * size);
  const cuts = [left];
  let sum = 0;
  for (let k = 0; k + 1 < chars.length; k += 1) {
    sum += expected[k]!;
    const middle = Math.round(left + ((right - left) * sum) / total);
    let best = middle;
    let least = Infinity;
    for (let x = Math.max(cuts[k]! + 2, middle - reach); x <= Math.min(right - 2, middle + reach); x += 1) {
      const price = ink[x - left]! + (0.3 * Math.abs(x - middle)) / Math.max(1, reach);
      if (price < least) [least, best] = [price, x];
    }
    cuts.push(Math.max(cuts[k]! + 1, Math.min(best, right - 1)));
  }
  cuts.push(right);
  return chars.map((_, k) => [cuts[k]!, Math.max(cuts[k + 1]!, cuts[k]! + 1)]);
}

/** Columns whose loops are a letter's: its own, and those near by of a neighbor that has no loop. */
function loopRanges(
  ranges: readonly (readonly [number, number])[],
  chars: readonly string[],
  reach: number,
): [number, number][] {
  const isLooped = (k: number): boolean => chars[k] !== undefined && LOOPED.includes(chars[k]);
  return ranges.map(([from, to], k) => {
    if (!isLooped(k)) return [from + (isLooped(k - 1) ? reach : 0), to - (isLooped(k + 1) ? reach : 0)];
    return [
      from - (k > 0 && !isLooped(k - 1) ? reach : 0),
      to + (k + 1 < chars.length && !isLooped(k + 1) ? reach : 0),
    ];
  });
}

function bowlsIn(
  group: Group,
  line: LineWork,
  holesByBlob: ReadonlyMap<number, readonly Hole[]>,
  frame: Frame,
): Hole[] {
  return group.blobs
    .flatMap(({ blob }) => holesByBlob.get(blob.component) ?? NO_HOLES)
    .filter((hole) => isBowl(hole, line, frame));
}

/** Whether a loop is the bowl of a letter, and no loop of its ascender or tail. */
function isBowl(hole: Hole, line: LineWork, frame: Frame): boolean {
  const [x, y] = [(hole.left + hole.right) / 2, (hole.top + hole.bottom) / 2];
  const u = uOf(frame, x, y);
  const height = (traceAt(line.baseline.curve, u) - vOf(frame, x, y)) / sizeAt(line.trend, u);
  return height > BOWL.low && height < BOWL.high;
}

function letterOf(
  groups: readonly Group[],
  line: LineWork,
  char: string | null,
  range: [number, number] | null,
  holesByBlob: ReadonlyMap<number, readonly Hole[]>,
  frame: Frame,
  loopRange: readonly [number, number] = range ?? [-Infinity, Infinity],
): LetterWork {
  const [left, right] = range ?? [-Infinity, Infinity];
  const blobs = groups.flatMap((group) => group.blobs);
  let { top, bottom } = reachOf(blobs, left, right, line, frame);
  let u0 = Infinity;
  let u1 = -Infinity;
  let v0 = Infinity;
  let v1 = -Infinity;
  let loops = 0;
  for (const { blob } of blobs) {
    const from = Math.max(left, blob.left);
    const to = Math.min(right, blob.right);
    if (range === null) {
      v0 = Math.min(v0, blob.v0);
      v1 = Math.max(v1, blob.v1);
    } else
      for (let x = from; x < to; x += 1) {
        v0 = Math.min(v0, blob.upper[x - blob.left]!);
        v1 = Math.max(v1, blob.lower[x - blob.left]!);
      }
    if (to > from) {
      u0 = Math.min(u0, range ? uOf(frame, from, (blob.top + blob.bottom) / 2) : blob.u0);
      u1 = Math.max(u1, range ? uOf(frame, to, (blob.top + blob.bottom) / 2) : blob.u1);
    }
    for (const hole of holesByBlob.get(blob.component) ?? NO_HOLES) {
      const middle = (hole.left + hole.right) / 2;
      if (middle < loopRange[0] || middle >= loopRange[1]) continue;
      if (char === null || !CLOSING.includes(char) || isBowl(hole, line, frame)) loops += 1;
    }
  }
  if (!Number.isFinite(top)) [top, bottom, u0, u1, v0, v1] = [0, 0, 0, 0, 0, 0];
  return { char, u0, u1, v0, v1, top, bottom, loops, count: 1 };
}
