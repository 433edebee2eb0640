import { uOf, vOf } from './frame.ts';
import type { Frame } from './frame.ts';
import type { Blob } from '../pieces/ink-pieces.ts';
import type { InkMap } from '../pieces/run-map.ts';

/** Ink by cells of the page. */
export interface Density {
  columns: number;
  rows: number;
  /** Size of a cell along and down the page, pixels. */
  along: number;
  down: number;
  values: Float32Array;
}

/** Sums the ink of the blobs in cells of some pixels along and down the page. */
export function densityOf(blobs: readonly Blob[], map: InkMap, frame: Frame, along: number, down: number): Density {
  let right = 1;
  let bottom = 1;
  for (const blob of blobs) {
    right = Math.max(right, blob.u1);
    bottom = Math.max(bottom, blob.v1);
  }
  const columns = Math.ceil(right / along) + 1;
  const rows = Math.ceil(bottom / down) + 2;
  const values = new Float32Array(columns * rows);
  const { from, to, row } = map;
  for (const blob of blobs)
    for (let i = blob.firstRun, last = i + blob.runCount; i < last; i += 1) {
      const y = row[i]! + 0.5;
      // Long runs are spread over their cells.
      for (let x = from[i]!, end = to[i]!; x < end; x += along) {
        const length = Math.min(along, end - x);
        const c = Math.floor(uOf(frame, x + length / 2, y) / along);
        const w = Math.floor(vOf(frame, x + length / 2, y) / down);
        if (c >= 0 && w >= 0 && c < columns && w < rows) values[w * columns + c] = values[w * columns + c]! + length;
      }
    }
  return { columns, rows, along, down, values };
}

/**
 * Box filters along each axis, three of them close to a Gaussian of the given standard deviations, in cells.
 * @param passes 3 for a smooth ridge, 1 where only the amount of pattern matters
 */
export function smoothed(density: Density, along: number, down: number, passes: 1 | 3 = 3): Density {
  const { columns, rows } = density;
  const between = new Float32Array(density.values.length);
  const values = new Float32Array(density.values.length);
  for (let pass = 0; pass < passes; pass += 1) {
    boxedRows(pass === 0 ? density.values : values, between, columns, rows, boxRadius(along, passes));
    boxedColumns(between, values, columns, rows, boxRadius(down, passes));
  }
  return { ...density, values };
}

/** A box of width w has variance (w^2 - 1) / 12; those of several passes add up. */
function boxRadius(deviation: number, passes: number): number {
  return Math.max(0, Math.round((Math.sqrt((12 / passes) * deviation * deviation + 1) - 1) / 2));
}

/** Two rows at a time (an odd last one twice): each sum waits for the one before it, those of two rows do not. */
function boxedRows(values: Float32Array, into: Float32Array, columns: number, rows: number, radius: number): void {
  const share = 1 / (2 * radius + 1);
  for (let y = 0; y < rows; y += 2) {
    const row = y * columns;
    const other = Math.min(y + 1, rows - 1) * columns;
    let sum = 0;
    let otherSum = 0;
    for (let x = 0; x < Math.min(radius, columns); x += 1) {
      sum += values[row + x]!;
      otherSum += values[other + x]!;
    }
    for (let x = 0; x < columns; x += 1) {
      if (x + radius < columns) {
        sum += values[row + x + radius]!;
        otherSum += values[other + x + radius]!;
      }
      if (x > radius) {
        sum -= values[row + x - radius - 1]!;
        otherSum -= values[other + x - radius - 1]!;
      }
      into[row + x] = sum * share;
      into[other + x] = otherSum * share;
    }
  }
}

/** Whole rows are added and taken away, so that memory is walked in order. */
function boxedColumns(values: Float32Array, into: Float32Array, columns: number, rows: number, radius: number): void {
  const share = 1 / (2 * radius + 1);
  const sums = new Float64Array(columns);
  for (let y = -radius; y < rows; y += 1) {
    const enters = (y + radius) * columns;
    const leaves = (y - radius - 1) * columns;
    if (y + radius < rows && leaves >= 0) {
      for (let x = 0, at = y * columns; x < columns; x += 1) {
        const sum = sums[x]! + values[enters + x]! - values[leaves + x]!;
        sums[x] = sum;
        into[at + x] = sum * share;
      }
      continue;
    }
    // Near the first and last row some enter only, or leave only.
    if (y + radius < rows) for (let x = 0; x < columns; x += 1) sums[x]! += values[enters + x]!;
    if (leaves >= 0) for (let x = 0; x < columns; x += 1) sums[x]! -= values[leaves + x]!;
    if (y >= 0) for (let x = 0; x < columns; x += 1) into[y * columns + x] = sums[x]! * share;
  }
}
