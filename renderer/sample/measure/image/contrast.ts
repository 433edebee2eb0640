import type { GrayImage } from '../types.ts';

/** Side of a tile in pixels: about one letter, small against a shadow's edge. */
const TILE = 32;
/** Every fourth pixel of a tile tells its paper level: 64 of them, error under one gray level. */
const STEP = 4;
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

/** Halfway gray level at a pixel. */
export function halfAt(levels: Levels, x: number, y: number): number {
  return levels.half[Math.floor(y / TILE) * levels.columns + Math.floor(x / TILE)]!;
}

/** Paper level at a pixel. */
export function paperAt(levels: Levels, x: number, y: number): number {
  return levels.paper[Math.floor(y / TILE) * levels.columns + Math.floor(x / TILE)]!;
}

/** Ink level at a pixel. */
export function inkAt(levels: Levels, x: number, y: number): number {
  return levels.ink[Math.floor(y / TILE) * levels.columns + Math.floor(x / TILE)]!;
}

/**
 * Levels of paper and ink around each tile of 32 pixels. Paper: mean of what the first threshold left white. Ink: mean
 * of the darker half of what it took, over the tile and its eight neighbors (over the page where there is none).
 */
export function localLevels(image: GrayImage, ink: Uint8Array): Levels {
  const columns = Math.ceil(image.width / TILE);
  const rows = Math.ceil(image.height / TILE);
  const tiles = columns * rows;
  const paper = tilePaper(image, ink, columns, rows);
  const sum = new Float64Array(tiles);
  const count = new Float64Array(tiles);
  gatherInk(image, ink, columns, null, sum, count);
  const pageMean = total(sum) / Math.max(1, total(count));
  const middle = pooled(sum, count, columns, rows, pageMean);
  sum.fill(0);
  count.fill(0);
  gatherInk(image, ink, columns, middle, sum, count);
  const core = pooled(sum, count, columns, rows, total(sum) / Math.max(1, total(count)));
  const half = new Uint8Array(tiles);
  for (let t = 0; t < tiles; t += 1) {
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

function tilePaper(image: GrayImage, ink: Uint8Array, columns: number, rows: number): Float32Array {
  const { width, height, data } = image;
  const sum = new Float64Array(columns * rows);
  const count = new Float64Array(columns * rows);
  for (let y = STEP >> 1; y < height; y += STEP) {
    const tileRow = Math.floor(y / TILE) * columns;
    for (let x = STEP >> 1; x < width; x += STEP) {
      const i = y * width + x;
      if (ink[i] !== 0) continue;
      const t = tileRow + ((x / TILE) | 0);
      sum[t] = sum[t]! + data[i]!;
      count[t] = count[t]! + 1;
    }
  }
  return pooled(sum, count, columns, rows, total(sum) / Math.max(1, total(count)));
}

/** Sums gray of ink by tile; with `ceiling`, only of ink at or below its tile's ceiling. */
function gatherInk(
  image: GrayImage,
  ink: Uint8Array,
  columns: number,
  ceiling: Float32Array | null,
  sum: Float64Array,
  count: Float64Array,
): void {
  const { width, height, data } = image;
  const words =
    width % 4 === 0 && ink.byteOffset % 4 === 0 ? new Uint32Array(ink.buffer, ink.byteOffset, ink.length >> 2) : null;
  for (let y = 0; y < height; y += 1) {
    const tileRow = Math.floor(y / TILE) * columns;
    const row = y * width;
    for (let x = 0; x < width; x += 1) {
      if (words && (x & 3) === 0 && words[(row + x) >> 2] === 0) {
        x += 3;
        continue;
      }
      if (ink[row + x] !== INK) continue;
      const t = tileRow + ((x / TILE) | 0);
      const g = data[row + x]!;
      if (ceiling && g > ceiling[t]!) continue;
      sum[t] = sum[t]! + g;
      count[t] = count[t]! + 1;
    }
  }
}

/** Mean over a tile and its eight neighbors; `fallback` where they are all empty. */
function pooled(sum: Float64Array, count: Float64Array, columns: number, rows: number, fallback: number): Float32Array {
  const result = new Float32Array(columns * rows);
  for (let r = 0; r < rows; r += 1)
    for (let c = 0; c < columns; c += 1) {
      let s = 0;
      let n = 0;
      for (let dr = -1; dr <= 1; dr += 1)
        for (let dc = -1; dc <= 1; dc += 1) {
          const rr = r + dr;
          const cc = c + dc;
          if (rr < 0 || cc < 0 || rr >= rows || cc >= columns) continue;
          s += sum[rr * columns + cc]!;
          n += count[rr * columns + cc]!;
        }
      result[r * columns + c] = n === 0 ? fallback : s / n;
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
  const stack: number[] = [];
  for (let y = 0; y < height; y += 1) {
    const tileRow = Math.floor(y / TILE) * levels.columns;
    const row = y * width;
    for (let x = 0; x < width; x += 1) {
      const i = row + x;
      if (ink[i] !== INK) continue;
      if (data[i]! > levels.half[tileRow + ((x / TILE) | 0)]!) ink[i] = 0;
      else if (ink[i - 1] !== INK || ink[i + 1] !== INK || ink[i - width] !== INK || ink[i + width] !== INK)
        stack.push(i);
    }
  }
  while (stack.length > 0) {
    const i = stack.pop()!;
    const x = i % width;
    const y = (i - x) / width;
    for (let dy = -1; dy <= 1; dy += 1)
      for (let dx = -1; dx <= 1; dx += 1) {
        const xx = x + dx;
        const yy = y + dy;
        if (xx < 0 || yy < 0 || xx >= width || yy >= height) continue;
        const j = yy * width + xx;
        if (ink[j] !== 0 || data[j]! > halfAt(levels, xx, yy)) continue;
        ink[j] = INK;
        stack.push(j);
      }
  }
}
