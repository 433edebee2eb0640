/** The pen's ink of a spiral: darker than the paper around it and than a line printed to be traced. */
import type { GrayImage } from '../types.ts';
import type { SpiralInk } from './spiral-fit.ts';

/** Ink is darker than the paper by this share of the darkest of it. */
const INK = 0.55;
/** Share of the pixels taken for the darkest. */
const DARKEST = 0.0005;
/** The paper's light is told for squares of this size, mm: the brighter part of each. */
const SQUARE_MM = 10;
const PAPER = 0.8;

export interface InkOfSpiral {
  ink: SpiralInk;
  /** How dark the darkest ink is: 0 as the paper, 1 black. */
  darkness: number;
}

/**
 * @param floor darkness that a printed line reaches: nothing paler is ink
 */
export function spiralInk(image: GrayImage, pxPerMm: number, floor = 0): InkOfSpiral {
  const { width, height } = image;
  const dark = darknessOf(image, pxPerMm);
  const counts = new Int32Array(256);
  for (const value of dark) counts[value]! += 1;
  let [seen, darkest] = [0, 255];
  while (darkest > 0 && (seen += counts[darkest]!) <= DARKEST * dark.length) darkest -= 1;
  const limit = Math.max(INK * darkest, 255 * floor);
  const [xs, ys]: [number[], number[]] = [[], []];
  for (let y = 0; y < height; y += 1)
    for (let x = 0; x < width; x += 1)
      if (dark[y * width + x]! > limit) {
        xs.push((x + 0.5) / pxPerMm);
        ys.push((y + 0.5) / pxPerMm);
      }
  return { ink: { x: Float64Array.from(xs), y: Float64Array.from(ys) }, darkness: darkest / 255 };
}

/** How much darker than the paper around it each pixel is, 0 to 255: a shadow over the sheet is taken out. */
function darknessOf({ width, height, data }: GrayImage, pxPerMm: number): Uint8Array {
  const size = Math.max(8, Math.round(SQUARE_MM * pxPerMm));
  const [across, down] = [Math.ceil(width / size), Math.ceil(height / size)];
  const light = new Float64Array(across * down);
  for (let by = 0; by < down; by += 1)
    for (let bx = 0; bx < across; bx += 1) {
      const counts = new Int32Array(256);
      let n = 0;
      for (let y = by * size; y < Math.min(height, (by + 1) * size); y += 2)
        for (let x = bx * size; x < Math.min(width, (bx + 1) * size); x += 2) {
          counts[data[y * width + x]!]! += 1;
          n += 1;
        }
      let [seen, value] = [0, 0];
      while (value < 255 && (seen += counts[value]!) < PAPER * n) value += 1;
      light[by * across + bx] = Math.max(1, value);
    }
  const out = new Uint8Array(data.length);
  for (let y = 0; y < height; y += 1) {
    const fy = Math.min(Math.max(y / size - 0.5, 0), down - 1);
    const [y0, ty] = [fy | 0, fy - (fy | 0)];
    const y1 = Math.min(y0 + 1, down - 1);
    for (let x = 0; x < width; x += 1) {
      const fx = Math.min(Math.max(x / size - 0.5, 0), across - 1);
      const [x0, tx] = [fx | 0, fx - (fx | 0)];
      const x1 = Math.min(x0 + 1, across - 1);
      const top = light[y0 * across + x0]! * (1 - tx) + light[y0 * across + x1]! * tx;
      const bottom = light[y1 * across + x0]! * (1 - tx) + light[y1 * across + x1]! * tx;
      const share = 1 - data[y * width + x]! / (top * (1 - ty) + bottom * ty);
      out[y * width + x] = share > 0 ? 255 * share : 0;
    }
  }
  return out;
}
