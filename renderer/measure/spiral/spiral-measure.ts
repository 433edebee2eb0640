import type { GrayImage, PageWarning } from '../types.ts';
import { fitSpiral } from './spiral-fit.ts';
import type { SpiralInk, SpiralShape } from './spiral-fit.ts';

/** What a drawn spiral shows. Lengths in mm; null where it cannot be told. */
export interface SpiralResult {
  turns: number | null;
  /** Root mean square distance of the line from the spiral that it follows best, along the radius. */
  radialRmsMm: number | null;
  /** The same as a share of the distance between turns. */
  radialRmsPercent: number | null;
  /** Swings out and back on a turn. */
  swingsPerTurn: number | null;
  /** Swings a second; null without the time of drawing. */
  frequencyHz: number | null;
  warnings: PageWarning[];
}

/** Ink is darker than the paper by this share of the darkest difference: the printed spiral of the sheet is paler. */
const INK = 0.55;
/** Points looked at while the spiral is sought, and places on a turn where the line is read. */
const SOUGHT = 1500;
const PLACES = 180;
/** Below this concentration the ink is no spiral; a turn and a half are needed. */
const LEAST_CONCENTRATION = 0.35;
const LEAST_TURNS = 1.5;
/** Changes slower than this many a turn are the shape of the spiral, not its wobble. */
const SLOW = 2;
/** A swing reaches this share of the wobble's own spread to both sides. */
const REACHES = 0.5;
/** Below this wobble, mm, swings are those of the picture's pixels. */
const LEAST_MM = 0.08;

const warning = (code: string, message: string): PageWarning => ({ code, message });
const NO_SPIRAL = warning(
  'no-spiral',
  'No spiral was found in this picture. Scan the sheet whole and straight, with nothing else drawn on it.',
);
const FEW_TURNS = warning('few-turns', 'The spiral has too few turns to judge its wobble by: two or more are needed.');
const BROKEN = warning('spiral-broken', 'Parts of the line are missing or crossed, so the numbers are rough.');

const NOTHING = { turns: null, radialRmsMm: null, radialRmsPercent: null, swingsPerTurn: null, frequencyHz: null };

/**
 * Measures a spiral on paper.
 * @param pxPerMm scale of the picture
 * @param seconds time it took to draw, or null
 * @throws RangeError where the scale or the time is not above 0
 */
export function measureSpiral(image: GrayImage, pxPerMm: number, seconds: number | null): SpiralResult {
  if (!(pxPerMm > 0) || (seconds !== null && !(seconds > 0))) throw new RangeError('Scale and time must be above 0.');
  const ink = inkOf(image, pxPerMm);
  const few = thinned(ink, SOUGHT);
  const shape = fitSpiral(few);
  if (!shape || shape.concentration < LEAST_CONCENTRATION) return { ...NOTHING, warnings: [NO_SPIRAL] };
  const line = lineOf(ink, shape);
  if (!line || line.turns < LEAST_TURNS) return { ...NOTHING, warnings: [FEW_TURNS] };
  const wobble = withoutSlow(line.offsets, SLOW);
  const rms = Math.sqrt(wobble.reduce((sum, e) => sum + e * e, 0) / wobble.length);
  const perTurn = rms < LEAST_MM ? 0 : PLACES * swingsPerPlace(wobble, REACHES * rms);
  return {
    turns: line.turns,
    radialRmsMm: rms,
    radialRmsPercent: (100 * rms) / shape.pitch,
    swingsPerTurn: perTurn,
    frequencyHz: seconds === null ? null : (perTurn * line.turns) / seconds,
    warnings: line.missing > 0.15 ? [BROKEN] : [],
  };
}

/** Pixels of pen ink, mm. */
function inkOf({ width, height, data }: GrayImage, pxPerMm: number): SpiralInk {
  const counts = new Int32Array(256);
  for (const gray of data) counts[gray]! += 1;
  const atShare = (share: number): number => {
    let seen = 0;
    return counts.findIndex((count) => (seen += count) > share * data.length);
  };
  const paper = atShare(0.6);
  const dark = atShare(0.0005);
  const limit = paper - INK * (paper - dark);
  const [xs, ys]: [number[], number[]] = [[], []];
  for (let y = 0; y < height; y += 1)
    for (let x = 0; x < width; x += 1)
      if (data[y * width + x]! < limit) {
        xs.push((x + 0.5) / pxPerMm);
        ys.push((y + 0.5) / pxPerMm);
      }
  return { x: Float64Array.from(xs), y: Float64Array.from(ys) };
}

function thinned(ink: SpiralInk, most: number): SpiralInk {
  const step = Math.max(1, Math.floor(ink.x.length / most));
  return { x: ink.x.filter((_, i) => i % step === 0), y: ink.y.filter((_, i) => i % step === 0) };
}

/** Offset of the line's middle from the spiral at even steps of angle, mm, from inside to outside. */
function lineOf(ink: SpiralInk, shape: SpiralShape): { offsets: number[]; turns: number; missing: number } | null {
  const { centerX, centerY, pitch, start, sense } = shape;
  const sums = new Map<number, [number, number]>();
  for (let i = 0; i < ink.x.length; i += 1) {
    const dx = ink.x[i]! - centerX;
    const dy = ink.y[i]! - centerY;
    const radius = Math.hypot(dx, dy);
    const angle = (sense * Math.atan2(dy, dx)) / (2 * Math.PI);
    const turn = Math.round((radius - start) / pitch - angle);
    const at = turn + angle;
    const bin = Math.floor(at * PLACES);
    const sum = sums.get(bin) ?? [0, 0];
    sum[0] += 1;
    sum[1] += radius - start - at * pitch;
    sums.set(bin, sum);
  }
  // The line's own stretch: places that hold about as much ink as usual, without stray dots beyond its ends.
  const bins = [...sums.keys()].sort((a, b) => a - b);
  const counts = bins.map((bin) => sums.get(bin)![0]).sort((a, b) => a - b);
  const usual = counts[counts.length >> 1] ?? 0;
  const full = bins.filter((bin) => sums.get(bin)![0] > 0.25 * usual);
  if (full.length < PLACES) return null;
  const [first, last] = [full[Math.floor(0.002 * full.length)]!, full[Math.ceil(0.998 * full.length) - 1]!];
  const offsets: number[] = [];
  let missing = 0;
  for (let bin = first; bin <= last; bin += 1) {
    const sum = sums.get(bin);
    if (sum && sum[0] > 0.25 * usual) offsets.push(sum[1] / sum[0]);
    else {
      missing += 1;
      offsets.push(offsets.at(-1) ?? 0);
    }
  }
  return { offsets, turns: (last - first + 1) / PLACES, missing: missing / (last - first + 1) };
}

/** The offsets without what changes slower than `slow` times a turn: a running mean over half such a change, twice. */
function withoutSlow(offsets: readonly number[], slow: number): number[] {
  const half = Math.round(PLACES / slow / 2);
  const smooth = (values: readonly number[]): number[] => {
    const sums = [0];
    for (const value of values) sums.push(sums.at(-1)! + value);
    return values.map((_, i) => {
      const reach = Math.min(half, i, values.length - 1 - i);
      return (sums[i + reach + 1]! - sums[i - reach]!) / (2 * reach + 1);
    });
  };
  const slowly = smooth(smooth(offsets));
  // At its ends the mean looks at one side only and would take the wobble itself away.
  return offsets.map((offset, i) => offset - slowly[i]!).slice(half >> 1, offsets.length - (half >> 1));
}

/** Swings out and back a place: changes of side that reach `reach` on both, halved, over the way from first to last. */
function swingsPerPlace(wobble: readonly number[], reach: number): number {
  let side = 0;
  const places: number[] = [];
  wobble.forEach((offset, place) => {
    const now = offset > reach ? 1 : offset < -reach ? -1 : side;
    if (now !== side) places.push(place);
    side = now;
  });
  const [first, last] = [places[0], places.at(-1)];
  return first === undefined || last === undefined || last === first ? 0 : (places.length - 1) / 2 / (last - first);
}
