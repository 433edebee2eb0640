import { GRID_MS } from '../prepare/butterworth.ts';
import type { Motion } from '../prepare/motion.ts';

/** An up or down stroke: the way between two turns of y. */
export interface PenStroke {
  motion: Motion;
  /** Grid points of its turns. */
  from: number;
  to: number;
  /** Zeros of vy at its ends, in grid steps (fractions). */
  zeroFrom: number;
  zeroTo: number;
  /** mm */
  height: number;
  /** s */
  duration: number;
  /** mm/s, from turn to turn */
  meanSpeed: number;
  peakSpeed: number;
  /** Largest |vy|, mm/s */
  peakVy: number;
  /** Middle of the stroke, s on the clock of the file. */
  atS: number;
}

/** A turn counts once the pen went back this far, mm. */
const BACK_MM = 0.3;
const SHORTEST_S = 0.03;

/**
 * Grid points where the strokes of a contact begin and end: counted turns, and the extremes of y before the first and
 * after the last of them.
 */
function turnsOf(y: Float64Array): number[] {
  const turns: number[] = [];
  let [low, high] = [0, 0];
  let direction = 0;
  for (let i = 1; i < y.length; i += 1) {
    if (direction >= 0 && y[i]! > y[high]!) high = i;
    if (direction <= 0 && y[i]! < y[low]!) low = i;
    if (direction === 0) {
      if (y[i]! - y[low]! >= BACK_MM && low < i) {
        direction = 1;
        turns.push(low);
        high = i;
      } else if (y[high]! - y[i]! >= BACK_MM) {
        direction = -1;
        turns.push(high);
        low = i;
      }
    } else if (direction === 1 && y[high]! - y[i]! >= BACK_MM) {
      turns.push(high);
      direction = -1;
      low = i;
    } else if (direction === -1 && y[i]! - y[low]! >= BACK_MM) {
      turns.push(low);
      direction = 1;
      high = i;
    }
  }
  if (direction !== 0) turns.push(direction === 1 ? high : low);
  return turns;
}

/** Where vy crosses zero next to a turn, in grid steps; the ends of the contact stay where they are. */
function zeroNear(vy: Float64Array, turn: number): number {
  if (turn === 0 || turn === vy.length - 1) return turn;
  const [before, at, after] = [vy[turn - 1]!, vy[turn]!, vy[turn + 1]!];
  if (before * at < 0) return turn - 1 + before / (before - at);
  if (at * after < 0) return turn + at / (at - after);
  return turn;
}

/** All strokes in the order of writing. */
export function strokesOf(motions: readonly Motion[]): PenStroke[] {
  const strokes: PenStroke[] = [];
  for (const motion of motions) {
    const { y, vy, speed, startMs } = motion;
    const turns = turnsOf(y);
    for (let k = 1; k < turns.length; k += 1) {
      const [from, to] = [turns[k - 1]!, turns[k]!];
      const [zeroFrom, zeroTo] = [zeroNear(vy, from), zeroNear(vy, to)];
      const duration = ((zeroTo - zeroFrom) * GRID_MS) / 1000;
      if (duration < SHORTEST_S) continue;
      let sum = 0;
      let peakSpeed = 0;
      let peakVy = 0;
      for (let i = from; i <= to; i += 1) {
        sum += speed[i]!;
        peakSpeed = Math.max(peakSpeed, speed[i]!);
        peakVy = Math.max(peakVy, Math.abs(vy[i]!));
      }
      strokes.push({
        motion,
        from,
        to,
        zeroFrom,
        zeroTo,
        height: Math.abs(y[to]! - y[from]!),
        duration,
        meanSpeed: sum / (to - from + 1),
        peakSpeed,
        peakVy,
        atS: (startMs + ((zeroFrom + zeroTo) / 2) * GRID_MS) / 1000,
      });
    }
  }
  return strokes;
}

/** |vy| of a stroke at the grid points between its two zeros. */
export function verticalSpeeds(stroke: PenStroke): Float64Array {
  const first = Math.ceil(stroke.zeroFrom - 1e-9);
  const last = Math.floor(stroke.zeroTo + 1e-9);
  return stroke.motion.vy.slice(first, last + 1).map(Math.abs);
}

/** vy of a stroke at the grid points from turn to turn, both included. */
export const turnToTurn = ({ motion, from, to }: PenStroke): Float64Array => motion.vy.slice(from, to + 1);
