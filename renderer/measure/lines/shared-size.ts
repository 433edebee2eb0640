import type { Layout } from './page-layout.ts';
import { withLines } from './page-layout.ts';
import { leastSquares, mean, scatter } from '../order-statistics.ts';
import type { Fit } from '../order-statistics.ts';
import { asRead, WAVY } from './baseline-fit.ts';
import type { Baseline } from './baseline-fit.ts';
import type { Extreme } from './extremes.ts';
import { adjustedTrend } from './letter-tops.ts';
import type { LineWork } from './line-reading.ts';
import { drawnTogether } from './shared-direction.ts';
import type { OfLine } from './shared-direction.ts';
import { traceAt } from './trace.ts';
import type { Group } from '../letters/word-groups.ts';

/** A foot counts from this many readings of its kind on; rarer ones say nothing about how low it usually stands. */
const LEAST = 4;
/** A line is levelled by at least this many known feet, and this share of its feet. */
const LEAST_FEET = 20;
const KNOWN = 0.5;
/** Kinds of feet are numbered by their letter's kind and their place in it: no letter has so many feet. */
const PLACES = 1024;
/** Rounds of fitting kinds and lines in turn; they settle after three. */
const ROUNDS = 4;

/** One foot of a line: which foot of which kind of letter, and where. */
interface Foot {
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
  const feet = layout.lines.map(({ baseline }) => known(asRead(baseline).feet, kindOfBlob));
  const offsets = offsetsOf(feet);
  if (offsets.size === 0) return layout;
  const lines = layout.lines.map((line, i) => {
    const used = feet[i]!.filter(({ kind }) => offsets.has(kind));
    if (used.length < LEAST_FEET || used.length < KNOWN * asRead(line.baseline).feet.length) return line;
    const before = fitted(used, () => 0);
    const after = fitted(used, (kind) => offsets.get(kind)!);
    return before && after ? tilted(line, after.slope - before.slope, used) : line;
  });
  return withLines(layout, lines);
}

/** The feet of letters whose kind is known, each named by its letter's kind and its place in the letter. */
function known(feet: readonly Extreme[], kindOfBlob: ReadonlyMap<number, number>): Foot[] {
  const seen = new Map<number, number>();
  return [...feet]
    .sort((a, b) => a.u - b.u)
    .flatMap(({ u, v, blob }) => {
      const place = seen.get(blob) ?? 0;
      seen.set(blob, place + 1);
      const kind = kindOfBlob.get(blob);
      return kind === undefined ? [] : [{ kind: PLACES * kind + place, u, v }];
    });
}

/**
 * How much lower than its line each kind of foot usually stands, pixels, drawn towards none as far as the readings of one
 * kind differ among themselves (a random effect; Henderson 1975, from memory). Empty where kinds do not differ by more
 * than that; kinds with few readings are left out.
 */
function offsetsOf(lines: readonly (readonly Foot[])[]): Map<number, number> {
  const counts = new Map<number, number>();
  for (const { kind } of lines.flat()) counts.set(kind, (counts.get(kind) ?? 0) + 1);
  const offsets = new Map([...counts].filter(([, n]) => n >= LEAST).map(([kind]) => [kind, 0]));
  const used = lines.map((feet) => feet.filter(({ kind }) => offsets.has(kind))).filter((feet) => feet.length >= 3);
  const total = used.reduce((sum, feet) => sum + feet.length, 0);
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
function restsOf(lines: readonly (readonly Foot[])[], offsets: ReadonlyMap<number, number>): Map<number, number[]> {
  const rests = new Map<number, number[]>();
  for (const feet of lines) {
    const line = fitted(feet, (kind) => offsets.get(kind)!);
    if (!line) continue;
    for (const { kind, u, v } of feet) {
      const list = rests.get(kind) ?? [];
      list.push(v - line.intercept - line.slope * u);
      rests.set(kind, list);
    }
  }
  return rests;
}

/** Direction of a line as it was read. */
interface Direction extends OfLine {
  feet: readonly Extreme[];
}

/**
 * The lines turned towards the direction that they share, as far as the unevenness of their feet allows it. Lines that
 * bend keep their own: it is that of their wave. Lines drawn by hand stay, and tell the others what they told before.
 */
export function aligned(layout: Layout): Layout {
  const free = directionsOf(layout);
  const values = drawnTogether(free);
  if (!values) return layout;
  const lines = [...layout.lines];
  free.forEach(({ at, value, feet }, i) => {
    lines[at] = tilted(lines[at]!, values[i]! - value, feet);
  });
  return withLines(layout, lines);
}

/** Directions of the lines that are straight. */
function directionsOf(layout: Layout): Direction[] {
  let [square, freedom] = [0, 0];
  const found = layout.lines.flatMap(({ baseline }, at) => {
    const read = asRead(baseline);
    const { feet, straight, rms } = read;
    if (feet.length < 3 || bendOf(read) > WAVY * layout.sizes[at]!) return [];
    square += feet.length * rms ** 2;
    freedom += feet.length - 2;
    return [{ at, value: straight.slope, feet, spread: scatter(feet.map(({ u }) => u)) }];
  });
  return found
    .filter(({ spread }) => spread > 0)
    .map(({ at, value, feet, spread }) => ({ at, value, feet, noise: square / freedom / spread }));
}

/** How far the curve of a line leaves its straight line, root mean square at its feet, pixels. */
function bendOf({ curve, straight, feet }: Baseline): number {
  const off = feet.map(({ u }) => traceAt(curve, u) - straight.intercept - straight.slope * u);
  return Math.sqrt(scatter(off) / off.length);
}

function fitted(feet: readonly Foot[], offset: (kind: number) => number): Fit | null {
  if (feet.length < 3) return null;
  return leastSquares(
    feet.map(({ u }) => u),
    feet.map(({ kind, v }) => v - offset(kind)),
  );
}

/** The line with its baseline turned about the middle of its feet; heights follow. One drawn by hand keeps it. */
function tilted(line: LineWork, slope: number, feet: readonly { u: number }[]): LineWork {
  const middle = mean(feet.map(({ u }) => u))!;
  const { byHand } = line.baseline;
  if (byHand) return { ...line, baseline: { ...line.baseline, byHand: turned(byHand, slope, middle) } };
  const heads = line.heads.map((head) => ({ ...head, height: head.height + slope * (head.u - middle) }));
  return { ...line, baseline: turned(line.baseline, slope, middle), heads, trend: adjustedTrend(heads, line.trend) };
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
