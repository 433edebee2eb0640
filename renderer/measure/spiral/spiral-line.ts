/** The drawn line beside the even spiral that it follows: how far it leaves it, read along the spiral. */
import type { SpiralInk, SpiralShape } from './spiral-fit.ts';

/** Places along the spiral where the line is read, mm: about a pen's width. */
export const SPIRAL_STEP_MM = 0.5;
/** A place with less than this share of the usual ink is not read. */
const FULL = 0.25;
/** Steps a turn of the table from turns to length. */
const TABLE = 720;

export interface SpiralLine {
  /** Offset along the radius at even steps of length, mm, + outwards, from the inside to the outside. */
  offsets: number[];
  /** Turn of the spiral at each of them. */
  turnsAt: number[];
  turns: number;
  lengthMm: number;
  /** Share of places without ink of their own. */
  missing: number;
}

/** Length of r = start + pitch t from t = 0, mm, and back: tables with a linear course between their steps. */
function lengths(
  { pitch, start }: SpiralShape,
  most: number,
): { of: (turn: number) => number; turnAt: (s: number) => number } {
  const table = new Float64Array(Math.ceil(most * TABLE) + 2);
  for (let i = 1; i < table.length; i += 1) {
    const r = start + (pitch * (i - 0.5)) / TABLE;
    table[i] = table[i - 1]! + Math.hypot(2 * Math.PI * r, pitch) / TABLE;
  }
  const of = (turn: number): number => {
    const at = Math.min(Math.max(turn * TABLE, 0), table.length - 1.001);
    const i = at | 0;
    return table[i]! + (at - i) * (table[i + 1]! - table[i]!);
  };
  const turnAt = (s: number): number => {
    let [low, high] = [0, table.length - 1];
    while (high - low > 1) {
      const mid = (low + high) >> 1;
      if (table[mid]! <= s) low = mid;
      else high = mid;
    }
    return (low + (s - table[low]!) / (table[high]! - table[low]!)) / TABLE;
  };
  return { of, turnAt };
}

/** Null with less than a turn of ink. */
export function lineAlong(ink: SpiralInk, shape: SpiralShape): SpiralLine | null {
  const { centerX, centerY, pitch, start, sense } = shape;
  const n = ink.x.length;
  const turns = new Float64Array(n);
  const offsets = new Float64Array(n);
  let most = 0;
  for (let i = 0; i < n; i += 1) {
    const dx = ink.x[i]! - centerX;
    const dy = ink.y[i]! - centerY;
    const radius = Math.hypot(dx, dy);
    const angle = (sense * Math.atan2(dy, dx)) / (2 * Math.PI);
    const at = Math.max(0, Math.round((radius - start) / pitch - angle) + angle);
    turns[i] = at;
    offsets[i] = radius - start - at * pitch;
    most = Math.max(most, at);
  }
  const { of, turnAt } = lengths(shape, most);
  const places = Math.ceil(of(most) / SPIRAL_STEP_MM) + 1;
  const counts = new Float64Array(places);
  const sums = new Float64Array(places);
  for (let i = 0; i < n; i += 1) {
    const place = Math.floor(of(turns[i]!) / SPIRAL_STEP_MM);
    counts[place]! += 1;
    sums[place]! += offsets[i]!;
  }
  const inked = [...counts].filter((count) => count > 0).sort((a, b) => a - b);
  const usual = inked[inked.length >> 1] ?? 0;
  const full: number[] = [];
  counts.forEach((count, place) => {
    if (count > FULL * usual) full.push(place);
  });
  if (full.length < 2 * Math.PI * pitch) return null;
  // The line's own stretch, without stray dots beyond its ends.
  const first = full[Math.floor(0.002 * full.length)]!;
  const last = full[Math.ceil(0.998 * full.length) - 1]!;
  const line: SpiralLine = {
    offsets: [],
    turnsAt: [],
    turns: 0,
    lengthMm: (last - first + 1) * SPIRAL_STEP_MM,
    missing: 0,
  };
  for (let place = first; place <= last; place += 1) {
    line.turnsAt.push(turnAt((place + 0.5) * SPIRAL_STEP_MM));
    if (counts[place]! > FULL * usual) line.offsets.push(sums[place]! / counts[place]!);
    else {
      line.missing += 1;
      line.offsets.push(line.offsets.at(-1) ?? 0);
    }
  }
  line.turns = line.turnsAt.at(-1)! - line.turnsAt[0]!;
  line.missing /= line.offsets.length;
  return line;
}
