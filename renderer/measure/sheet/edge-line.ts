import { leastSquares } from '../../statistics/least-squares.ts';
import { median } from '../../statistics/order-statistics.ts';
import type { GrayImage } from '../types.ts';
import type { Point } from './homography.ts';
import { CONTRAST } from './small-picture.ts';

/** Places along each edge where the sheet's border is measured. */
const PLACES = 80;

/** A point on the line and its direction, pixels of the large picture. */
export interface EdgeLine {
  x: number;
  y: number;
  dx: number;
  dy: number;
}

/** Line through the steepest rise of gray along the normal at many places of one side; outliers dropped twice. */
export function refinedEdge(
  image: GrayImage,
  corners: readonly Point[],
  side: number,
  reach: number,
  least: number,
): EdgeLine | null {
  const a = corners[side]!;
  const b = corners[(side + 1) % 4]!;
  const length = Math.hypot(b.x - a.x, b.y - a.y);
  if (length < 20) return null;
  const [dx, dy] = [(b.x - a.x) / length, (b.y - a.y) / length];
  // Corners run clockwise on the screen: the inside lies to the right of the direction.
  const [nx, ny] = [-dy, dx];
  let along: number[] = [];
  let offsets: number[] = [];
  for (let k = 0; k < PLACES; k += 1) {
    const t = (0.04 + (0.92 * (k + 0.5)) / PLACES) * length;
    const offset = steepest(image, a.x + t * dx, a.y + t * dy, nx, ny, reach, least);
    if (offset === null) continue;
    along.push(t);
    offsets.push(offset);
  }
  for (let round = 0; round < 4; round += 1) {
    if (along.length < PLACES / 4) return null;
    // Places along an edge differ, so there is a line.
    const fit = leastSquares(along, offsets)!;
    const off = along.map((t, i) => offsets[i]! - fit.intercept - fit.slope * t);
    const spread = Math.max(0.4, 2.5 * 1.4826 * median(off.map(Math.abs))!);
    if (round === 3) {
      const [c, s] = [1 / Math.hypot(1, fit.slope), fit.slope / Math.hypot(1, fit.slope)];
      return { x: a.x + nx * fit.intercept, y: a.y + ny * fit.intercept, dx: dx * c + nx * s, dy: dy * c + ny * s };
    }
    const kept = off.map((o) => Math.abs(o) <= spread);
    along = along.filter((_, i) => kept[i]);
    offsets = offsets.filter((_, i) => kept[i]);
  }
  return null;
}

/** Place of the steepest rise from table to sheet along a normal, between pixels; null where there is none. */
function steepest(
  image: GrayImage,
  x: number,
  y: number,
  nx: number,
  ny: number,
  reach: number,
  least: number,
): number | null {
  const samples: number[] = [];
  for (let d = -reach - 1; d <= reach + 1; d += 1) {
    const v = sample(image, x + d * nx - 0.5, y + d * ny - 0.5);
    if (v === null) return null;
    samples.push(v);
  }
  let best = -1;
  let rise = 0;
  for (let i = 1; i + 1 < samples.length; i += 1) {
    const step = samples[i + 1]! - samples[i - 1]!;
    if (step > rise) [rise, best] = [step, i];
  }
  if (best < 2 || best + 2 >= samples.length || rise < Math.max(CONTRAST / 2, least)) return null;
  const [before, here, after] = [-1, 0, 1].map((d) => samples[best + d + 1]! - samples[best + d - 1]!) as [
    number,
    number,
    number,
  ];
  const bend = before - 2 * here + after;
  return best - reach - 1 + (bend < 0 ? (before - after) / (2 * bend) : 0);
}

/** Gray between four pixels, bilinear; null outside the picture. */
function sample(image: GrayImage, x: number, y: number): number | null {
  const ix = Math.floor(x);
  const iy = Math.floor(y);
  if (ix < 0 || iy < 0 || ix + 1 >= image.width || iy + 1 >= image.height) return null;
  const [fx, fy] = [x - ix, y - iy];
  const at = iy * image.width + ix;
  const top = image.data[at]! * (1 - fx) + image.data[at + 1]! * fx;
  const bottom = image.data[at + image.width]! * (1 - fx) + image.data[at + image.width + 1]! * fx;
  return top * (1 - fy) + bottom * fy;
}

/** Where two edges meet; null when they run side by side. */
export function crossing(a: EdgeLine, b: EdgeLine): Point | null {
  const det = a.dx * b.dy - a.dy * b.dx;
  if (Math.abs(det) < 1e-6) return null;
  const t = ((b.x - a.x) * b.dy - (b.y - a.y) * b.dx) / det;
  return { x: a.x + t * a.dx, y: a.y + t * a.dy };
}
