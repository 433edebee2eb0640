import type { Blob } from '../pieces/ink-pieces.ts';
import { uOf } from './frame.ts';
import type { Frame } from './frame.ts';

/** A turning point of an outline: a letter's top (`top`) or bottom (`bottom`), in page pixels. */
export interface Extreme {
  u: number;
  v: number;
  blob: number;
  kind: 'top' | 'bottom';
}

/**
 * Tops of the upper outline and bottoms of the lower one that stand out by at least `prominence` pixels.
 * The ends of an outline count as falling off, so that a single stroke has one top and one bottom.
 */
export function extremesOf(blobs: readonly Blob[], frame: Frame, prominence: number): Extreme[] {
  const found: Extreme[] = [];
  blobs.forEach((blob, index) => {
    for (const at of peaks(blob.upper, -1, prominence))
      found.push({ u: columnU(blob, at, frame, blob.upper), v: blob.upper[at]!, blob: index, kind: 'top' });
    for (const at of peaks(blob.lower, 1, prominence))
      found.push({ u: columnU(blob, at, frame, blob.lower), v: blob.lower[at]!, blob: index, kind: 'bottom' });
  });
  return found;
}

/** The tops and bottoms of each blob, by its index. */
export function byBlob(extremes: readonly Extreme[], blobs: number): Extreme[][] {
  const lists: Extreme[][] = Array.from({ length: blobs }, () => []);
  for (const extreme of extremes) lists[extreme.blob]!.push(extreme);
  return lists;
}

function columnU(blob: Blob, column: number, frame: Frame, outline: Float32Array): number {
  // v = x sin + y cos, so y follows from v; the turn is small and u is needed to a pixel only.
  const x = blob.left + column + 0.5;
  const y = frame.originY + (outline[column]! - (x - frame.originX) * frame.sin) / frame.cos;
  return uOf(frame, x, y);
}

/**
 * Indices of the peaks of `sign * values`: each rises over its neighbors' valleys by at least `prominence`.
 * A plateau answers its middle.
 */
export function peaks(values: Float32Array, sign: 1 | -1, prominence: number): number[] {
  const found: number[] = [];
  let best = -Infinity;
  let from = 0;
  let to = 0;
  let valley = Infinity;
  let rising = true;
  for (let i = 0; i < values.length; i += 1) {
    const value = sign * values[i]!;
    if (rising) {
      if (value > best) {
        best = value;
        from = i;
        to = i;
      } else if (value > best - 0.25 && to === i - 1) to = i;
      if (value < best - prominence) {
        found.push((from + to) >> 1);
        rising = false;
        valley = value;
      }
    } else if (value < valley) valley = value;
    else if (value > valley + prominence) {
      rising = true;
      best = value;
      from = i;
      to = i;
    }
  }
  if (rising && values.length > 0) found.push((from + to) >> 1);
  return found;
}
