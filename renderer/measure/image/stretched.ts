import type { GrayImage } from '../types.ts';
import type { Levels } from './contrast.ts';

/** Contrast (share of the paper's brightness) that faint writing is brought to: that of an ordinary pen. */
const WANTED = 0.55;
/** Beyond this the paper's own grain would become ink. */
const MOST = 2.6;

/**
 * The picture with its contrast to the paper stretched: what a threshold made for pens would lose of pencil stays whole.
 * A copy; each pixel moves away from the paper level of its place, so that shadows stay what they are.
 * @param contrast of the ink found at first, share of the paper's brightness
 */
export function stretched(image: GrayImage, levels: Levels, contrast: number): GrayImage {
  const factor = Math.min(MOST, Math.max(1, WANTED / contrast));
  const data = new Uint8Array(image.data.length);
  const { width, height } = image;
  const paper = smoothPaper(levels);
  const at = new Float32Array(width);
  for (let y = 0; y < height; y += 1) {
    paperOfRow(paper, levels.columns, levels.rows, y, at);
    for (let x = 0, i = y * width; x < width; x += 1, i += 1) {
      const level = at[x]!;
      const value = level - (level - image.data[i]!) * factor;
      data[i] = value < 0 ? 0 : value > 255 ? 255 : value;
    }
  }
  return { width, height, data };
}

/** Side of a tile of the levels, pixels. */
const TILE = 32;

/** Paper levels with those of each tile's neighbors, so that no tile's edge shows. */
function smoothPaper({ paper, columns, rows }: Levels): Float32Array {
  return paper.map((_, t) => {
    const [row, column] = [Math.floor(t / columns), t % columns];
    let [sum, n] = [0, 0];
    for (let r = Math.max(0, row - 1); r <= Math.min(rows - 1, row + 1); r += 1)
      for (let c = Math.max(0, column - 1); c <= Math.min(columns - 1, column + 1); c += 1) {
        sum += paper[r * columns + c]!;
        n += 1;
      }
    return sum / n;
  });
}

/** Paper levels along a row of pixels, between the middles of the tiles. */
function paperOfRow(paper: Float32Array, columns: number, rows: number, y: number, at: Float32Array): void {
  const v = Math.min(rows - 1, Math.max(0, y / TILE - 0.5));
  const row = Math.min(Math.floor(v), Math.max(0, rows - 2));
  const below = Math.min(row + 1, rows - 1);
  const level = (c: number): number =>
    paper[row * columns + c]! * (1 - (v - row)) + paper[below * columns + c]! * (v - row);
  for (let x = 0; x < at.length; x += 1) {
    const u = Math.min(columns - 1, Math.max(0, x / TILE - 0.5));
    const column = Math.min(Math.floor(u), Math.max(0, columns - 2));
    const next = Math.min(column + 1, columns - 1);
    at[x] = level(column) * (1 - (u - column)) + level(next) * (u - column);
  }
}
