import type { GrayImage } from '../types.ts';
import { inkRuns } from './runs.ts';

/** Side of a tile in pixels: about one letter, small against a shadow's edge. */
export const TILE_BITS = 5;
const TILE = 1 << TILE_BITS;
/** Pixels of a tile that tell its paper level: every fourth row, every eighth column, 32 of them. */
export const STEP = 4;
export const STEP_ALONG = 8;
/** Marks in the ink bitmap. */
export const INK = 1;
/** Was ink of a printed ruling: never ink again. */
export const ERASED = 2;
/** Least contrast between paper and ink in gray levels; below it noise would count as ink. */
const LEAST_CONTRAST = 12;

/** Paper and ink levels by tile, and the gray level halfway between them. */
export interface Levels {
  columns: number;
  rows: number;
  paper: Float32Array;
  ink: Float32Array;
  half: Uint8Array;
}

/** Paper level at a pixel. */
export function paperAt(levels: Levels, x: number, y: number): number {
  return levels.paper[(y >> TILE_BITS) * levels.columns + (x >> TILE_BITS)]!;
}

/** Ink level at a pixel. */
export function inkAt(levels: Levels, x: number, y: number): number {
  return levels.ink[(y >> TILE_BITS) * levels.columns + (x >> TILE_BITS)]!;
}

/** Sums of gray and counts of pixels by tile. */
export interface TileSums {
  sum: Float64Array;
  count: Float64Array;
}

/** How the pixels of a picture are summed by tile: plain or fast. */
export interface Gather {
  paper(): TileSums;
  /** Ink at or below its tile's ceiling. */
  ink(ceiling: Float32Array): TileSums;
}

/** Columns and rows of tiles. */
export function tilesOf(image: GrayImage): { columns: number; rows: number } {
  return { columns: Math.ceil(image.width / TILE), rows: Math.ceil(image.height / TILE) };
}

/**
 * Levels of paper and ink around each tile of 32 pixels. Paper: mean of what the first threshold left white. Ink: mean
 * of the darker half of what it took, over the tile and its eight neighbors (over the page where there is none).
 */
export function localLevels(image: GrayImage, gather: Gather): Levels {
  const { columns, rows } = tilesOf(image);
  const paper = pooled(gather.paper(), columns, rows);
  const middle = pooled(gather.ink(new Float32Array(columns * rows).fill(255)), columns, rows);
  const core = pooled(gather.ink(middle), columns, rows);
  const half = new Uint8Array(columns * rows);
  for (let t = 0; t < half.length; t += 1) {
    const contrast = paper[t]! - core[t]!;
    half[t] = contrast < LEAST_CONTRAST ? 0 : Math.round(paper[t]! - contrast / 2);
  }
  return { columns, rows, paper, ink: core, half };
}

function total(values: Float64Array): number {
  let sum = 0;
  for (const v of values) sum += v;
  return sum;
}

/** Sums gray of paper by tile. */
export function gatherPaper(image: GrayImage, ink: Uint8Array): TileSums {
  const { width, height, data } = image;
  const { columns, rows } = tilesOf(image);
  const sum = new Float64Array(columns * rows);
  const count = new Float64Array(columns * rows);
  for (let y = STEP >> 1; y < height; y += STEP) {
    const tileRow = (y >> TILE_BITS) * columns;
    for (let x = STEP_ALONG >> 1; x < width; x += STEP_ALONG) {
      const i = y * width + x;
      if (ink[i] !== 0) continue;
      const t = tileRow + (x >> TILE_BITS);
      sum[t] = sum[t]! + data[i]!;
      count[t] = count[t]! + 1;
    }
  }
  return { sum, count };
}

/** Sums gray of ink by tile, of ink at or below its tile's ceiling only. */
export function gatherInk(image: GrayImage, ink: Uint8Array, ceiling: Float32Array): TileSums {
  const { width, height, data } = image;
  const { columns, rows } = tilesOf(image);
  const sum = new Float64Array(columns * rows);
  const count = new Float64Array(columns * rows);
  for (let y = 0; y < height; y += 1) {
    const tileRow = (y >> TILE_BITS) * columns;
    for (let x = 0; x < width; x += 1) {
      const i = y * width + x;
      const t = tileRow + (x >> TILE_BITS);
      if (ink[i] !== INK || data[i]! > ceiling[t]!) continue;
      sum[t] = sum[t]! + data[i]!;
      count[t] = count[t]! + 1;
    }
  }
  return { sum, count };
}

/** Mean over a tile and its eight neighbors; that of the page where they are all empty. */
function pooled({ sum, count }: TileSums, columns: number, rows: number): Float32Array {
  const fallback = total(sum) / Math.max(1, total(count));
  const result = new Float32Array(columns * rows);
  const rowSum = new Float64Array(columns);
  const rowCount = new Float64Array(columns);
  for (let r = 0; r < rows; r += 1) {
    const top = Math.max(0, r - 1);
    const bottom = Math.min(rows - 1, r + 1);
    for (let c = 0; c < columns; c += 1) {
      let s = 0;
      let n = 0;
      for (let k = top; k <= bottom; k += 1) {
        s += sum[k * columns + c]!;
        n += count[k * columns + c]!;
      }
      rowSum[c] = s;
      rowCount[c] = n;
    }
    for (let c = 0; c < columns; c += 1) {
      const left = c > 0 ? c - 1 : c;
      const right = c + 1 < columns ? c + 1 : c;
      let s = 0;
      let n = 0;
      for (let k = left; k <= right; k += 1) {
        s += rowSum[k]!;
        n += rowCount[k]!;
      }
      result[r * columns + c] = n === 0 ? fallback : s / n;
    }
  }
  return result;
}

/**
 * Thresholds again at half contrast, in place: ink of the first pass that is lighter than halfway becomes paper, and
 * what touches the rest and is darker than halfway becomes ink (8-connected flood). Erased rulings stay erased.
 * Sauvola thickens dark strokes and thins pale ones; at half contrast a blurred edge lies where the stroke's edge was.
 */
export function halfContrast(image: GrayImage, ink: Uint8Array, levels: Levels): void {
  const { width, height, data } = image;
  const { half, columns } = levels;
  const runs = inkRuns(ink, width, height);
  // A pixel waits once: when it was kept, or when it became ink.
  const stack = new Int32Array(ink.length);
  let waiting = 0;
  for (let y = 0; y < height; y += 1) {
    const tileRow = (y >> TILE_BITS) * columns;
    for (let r = runs.rows[y]!; r < runs.rows[y + 1]!; r += 1)
      for (let x = runs.from[r]!, to = runs.to[r]!; x < to; x += 1) {
        const i = y * width + x;
        if (data[i]! > half[tileRow + (x >> TILE_BITS)]!) ink[i] = 0;
        else {
          stack[waiting] = i;
          waiting += 1;
        }
      }
  }
  while (waiting > 0) {
    waiting -= 1;
    const i = stack[waiting]!;
    const x = i % width;
    const y = (i - x) / width;
    const left = x > 0 ? x - 1 : 0;
    const right = x + 1 < width ? x + 1 : x;
    const bottom = y + 1 < height ? y + 1 : y;
    for (let yy = y > 0 ? y - 1 : 0; yy <= bottom; yy += 1) {
      const tileRow = (yy >> TILE_BITS) * columns;
      for (let xx = left; xx <= right; xx += 1) {
        const j = yy * width + xx;
        if (ink[j] !== 0 || data[j]! > half[tileRow + (xx >> TILE_BITS)]!) continue;
        ink[j] = INK;
        stack[waiting] = j;
        waiting += 1;
      }
    }
  }
}
