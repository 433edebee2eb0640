import { uOf, vOf } from './frame.ts';
import type { Frame } from './frame.ts';
import type { Blob, InkMap } from './blobs.ts';

/** Ink by cells of the page. */
export interface Density {
  columns: number;
  rows: number;
  cell: number;
  values: Float32Array;
}

/** Sums the ink of the blobs in square cells of `cell` pixels. */
export function densityOf(blobs: readonly Blob[], map: InkMap, frame: Frame, cell: number): Density {
  let right = 1;
  let bottom = 1;
  for (const blob of blobs) {
    right = Math.max(right, blob.u1);
    bottom = Math.max(bottom, blob.v1);
  }
  const columns = Math.ceil(right / cell) + 1;
  const rows = Math.ceil(bottom / cell) + 2;
  const values = new Float32Array(columns * rows);
  for (const blob of blobs)
    for (let i = blob.firstRun; i < blob.firstRun + blob.runCount; i += 1) {
      const r = map.order[i]!;
      const y = map.rowOf[r]! + 0.5;
      // Long runs are spread over their cells.
      for (let x = map.runs.from[r]!, end = map.runs.to[r]!; x < end; x += cell) {
        const length = Math.min(cell, end - x);
        const c = Math.floor(uOf(frame, x + length / 2, y) / cell);
        const w = Math.floor(vOf(frame, x + length / 2, y) / cell);
        if (c >= 0 && w >= 0 && c < columns && w < rows) values[w * columns + c] = values[w * columns + c]! + length;
      }
    }
  return { columns, rows, cell, values };
}

/** Three box filters along each axis: close to a Gaussian of the given standard deviations, in cells. */
export function smoothed(density: Density, along: number, down: number): Density {
  const { columns, rows } = density;
  let values = density.values;
  for (let pass = 0; pass < 3; pass += 1) {
    values = boxed(values, rows, columns, columns, 1, boxRadius(along));
    values = boxed(values, columns, rows, 1, columns, boxRadius(down));
  }
  return { ...density, values };
}

/** A box of width w has variance (w^2 - 1) / 12; three of them add up. */
function boxRadius(deviation: number): number {
  return Math.max(0, Math.round((Math.sqrt(4 * deviation * deviation + 1) - 1) / 2));
}

function boxed(
  values: Float32Array,
  lanes: number,
  length: number,
  laneStep: number,
  step: number,
  radius: number,
): Float32Array<ArrayBuffer> {
  const result = new Float32Array(values.length);
  const width = 2 * radius + 1;
  for (let lane = 0; lane < lanes; lane += 1) {
    const base = lane * laneStep;
    let sum = 0;
    for (let i = 0; i < Math.min(radius, length); i += 1) sum += values[base + i * step]!;
    for (let i = 0; i < length; i += 1) {
      if (i + radius < length) sum += values[base + (i + radius) * step]!;
      if (i - radius - 1 >= 0) sum -= values[base + (i - radius - 1) * step]!;
      result[base + i * step] = sum / width;
    }
  }
  return result;
}
