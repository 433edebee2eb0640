import type { Layout } from './page-layout.ts';
import { withLines } from './page-layout.ts';
import { type Fit, leastSquares } from '../../statistics/least-squares.ts';
import { mean, scatter } from '../../statistics/order-statistics.ts';
import { asRead, WAVY } from './baseline-fit.ts';
import type { Baseline } from './baseline-fit.ts';
import type { Extreme } from './extremes.ts';
import { adjustedTrend } from './letter-tops.ts';
import type { LineWork } from './line-work.ts';
import { drawnTogether } from './shared-direction.ts';
import type { OfLine } from './shared-direction.ts';
import { traceAt } from './trace.ts';
import type { Group } from '../letters/word-groups.ts';

/** A bottom counts from this many readings of its kind on; rarer ones say nothing about how low it usually stands. */
const LEAST = 4;
/** A line is levelled by at least this many known bottoms, and this share of its bottoms. */
const LEAST_FEET = 20;
const KNOWN = 0.5;
/** Kinds of bottoms are numbered by their letter's kind and their place in it: no letter has so many bottoms. */
const PLACES = 1024;
/** Rounds of fitting kinds and lines in turn; they settle after three. */
const ROUNDS = 4;

/** One bottom of a line: which bottom of which kind of letter, and where. */
interface LetterBottom {
  kind: number;
  u: number;
  v: number;
}

/**
 * The baselines tilted so that unlike letters do not tilt them: in an uneven hand some letters stand lower than others,
 * and a line that begins with those seems to rise. Each kind of letter's usual offset is taken off first (additive fit of
 * kinds and lines over the page). Lines moved by hand stay as they are; what was read of them counts as before.
 * @param kinds letters that look alike
 */
export function levelled(layout: Layout, kinds: ReadonlyMap<Group, number>): Layout {
  const kindOfBlob = new Map<number, number>();
  for (const [group, kind] of kinds) for (const { index } of group.blobs) kindOfBlob.set(index, kind);
  const bottoms = layout.lines.map(({ baseline }) => known(asRead(baseline).bottoms, kindOfBlob));
  const offsets = offsetsOf(bottoms);
  if (offsets.size === 0) return layout;
  const lines = layout.lines.map((line, i) => {
    const used = bottoms[i]!.filter(({ kind }) => offsets.has(kind));
    if (used.length < LEAST_FEET || used.length < KNOWN * asRead(line.baseline).bottoms.length) return line;
    const before = fitted(used, () => 0);
    const after = fitted(used, (kind) => offsets.get(kind)!);
    return before && after ? tilted(line, after.slope - before.slope, used) : line;
  });
  return withLines(layout, lines);
}

/** The bottoms of letters whose kind is known, each named by its letter's kind and its place in the letter. */
function known(bottoms: readonly Extreme[], kindOfBlob: ReadonlyMap<number, number>): LetterBottom[] {
  const seen = new Map<number, number>();
  return [...bottoms]
    .sort((a, b) => a.u - b.u)
    .flatMap(({ u, v, blob }) => {
      const place = seen.get(blob) ?? 0;
      seen.set(blob, place + 1);
      const kind = kindOfBlob.get(blob);
      return kind === undefined ? [] : [{ kind: PLACES * kind + place, u, v }];
    });
}

/**
 * How much lower than its line each kind of bottom usually stands, pixels, shrunk toward none as far as the readings of one
 * kind differ among themselves (a random effect; Henderson 1975, from memory). Empty where kinds do not differ by more
 * than that; kinds with few readings are left out.
 */
function offsetsOf(lines: readonly (readonly LetterBottom[])[]): Map<number, number> {
  const counts = new Map<number, number>();
  for (const { kind } of lines.flat()) counts.set(kind, (counts.get(kind) ?? 0) + 1);
  const offsets = new Map([...counts].filter(([, n]) => n >= LEAST).map(([kind]) => [kind, 0]));
  const used = lines
    .map((bottoms) => bottoms.filter(({ kind }) => offsets.has(kind)))
    .filter((bottoms) => bottoms.length >= 3);
  const total = used.reduce((sum, bottoms) => sum + bottoms.length, 0);
  if (total < LEAST_FEET) return new Map();
  for (let round = 0; round < ROUNDS; round += 1) {
    const rests = restsOf(used, offsets);
    let [within, between] = [0, 0];
    const means = new Map([...rests].map(([kind, list]) => [kind, list.reduce((a, b) => a + b, 0) / list.length]));
    for (const [kind, list] of rests) {
      for (const rest of list) within += (rest - means.get(kind)!) ** 2 / total;
      between += (list.length / total) * means.get(kind)! ** 2;
    }
    if (between <= within) return new Map();
    for (const [kind, list] of rests)
      offsets.set(kind, (means.get(kind)! * list.length * between) / (list.length * between + within));
  }
  return offsets;
}

/** Distances below the lines by kind; the lines are fitted without what the kinds usually are. */
function restsOf(
  lines: readonly (readonly LetterBottom[])[],
  offsets: ReadonlyMap<number, number>,
): Map<number, number[]> {
  const rests = new Map<number, number[]>();
  for (const bottoms of lines) {
    const line = fitted(bottoms, (kind) => offsets.get(kind)!);
    if (!line) continue;
    for (const { kind, u, v } of bottoms) {
      const list = rests.get(kind) ?? [];
      list.push(v - line.intercept - line.slope * u);
      rests.set(kind, list);
    }
  }
  return rests;
}

/** Direction of a line as it was read. */
interface Direction extends OfLine {
  bottoms: readonly Extreme[];
}

/**
 * The lines turned towards the direction that they share, as far as the unevenness of their bottoms allows it. Lines that
 * bend keep their own: it is that of their wave. Lines drawn by hand stay, and tell the others what they told before.
 */
export function aligned(layout: Layout): Layout {
  const free = directionsOf(layout);
  const values = drawnTogether(free);
  if (!values) return layout;
  const lines = [...layout.lines];
  free.forEach(({ at, value, bottoms }, i) => {
    lines[at] = tilted(lines[at]!, values[i]! - value, bottoms);
  });
  return withLines(layout, lines);
}

/** Directions of the lines that are straight. */
function directionsOf(layout: Layout): Direction[] {
  let [square, freedom] = [0, 0];
  const found = layout.lines.flatMap(({ baseline }, at) => {
    const read = asRead(baseline);
    const { bottoms, straight, rms } = read;
    if (bottoms.length < 3 || bendOf(read) > WAVY * layout.sizes[at]!) return [];
    square += bottoms.length * rms ** 2;
    freedom += bottoms.length - 2;
    return [{ at, value: straight.slope, bottoms, spread: scatter(bottoms.map(({ u }) => u)) }];
  });
  return found
    .filter(({ spread }) => spread > 0)
    .map(({ at, value, bottoms, spread }) => ({ at, value, bottoms, noise: square / freedom / spread }));
}

/** How far the curve of a line leaves its straight line, root mean square at its bottoms, pixels. */
function bendOf({ curve, straight, bottoms }: Baseline): number {
  const off = bottoms.map(({ u }) => traceAt(curve, u) - straight.intercept - straight.slope * u);
  return Math.sqrt(scatter(off) / off.length);
}

function fitted(bottoms: readonly LetterBottom[], offset: (kind: number) => number): Fit | null {
  if (bottoms.length < 3) return null;
  return leastSquares(
    bottoms.map(({ u }) => u),
    bottoms.map(({ kind, v }) => v - offset(kind)),
  );
}

/** The line with its baseline turned about the middle of its bottoms; heights follow. One drawn by hand keeps it. */
function tilted(line: LineWork, slope: number, bottoms: readonly { u: number }[]): LineWork {
  const middle = mean(bottoms.map(({ u }) => u))!;
  const { byHand } = line.baseline;
  if (byHand) return { ...line, baseline: { ...line.baseline, byHand: turned(byHand, slope, middle) } };
  const tops = line.tops.map((top) => ({ ...top, height: top.height + slope * (top.u - middle) }));
  return { ...line, baseline: turned(line.baseline, slope, middle), tops, trend: adjustedTrend(tops, line.trend) };
}

function turned(baseline: Baseline, slope: number, middle: number): Baseline {
  const { curve, straight } = baseline;
  const v = curve.v.map((at, i) => at + slope * (curve.u0 + i * curve.step - middle));
  return {
    ...baseline,
    curve: { ...curve, slope: curve.slope + slope, v },
    straight: { slope: straight.slope + slope, intercept: straight.intercept - slope * middle },
  };
}
