import { median } from '../order-statistics.ts';
import type { GrayImage } from '../types.ts';
import type { Point } from './homography.ts';

/** Where the sheet lies in the picture. */
export type SheetEdges =
  /** No edges seen: the picture is the sheet (a flatbed scan). */
  | { kind: 'none' }
  /** All four edges seen: corners top left, top right, bottom right, bottom left. */
  | { kind: 'quad'; corners: Point[] }
  /** The sheet runs out of the picture while other edges are seen at an angle. */
  | { kind: 'cut' };

/** Long side of the small picture in which the sheet is looked for. */
const SMALL = 256;
/** A table is darker than the sheet by at least this many gray levels. */
const CONTRAST = 28;
/** The sheet covers this share of a photo at least, and a scan's dark rim leaves at most the other uncovered. */
const LEAST_AREA = 0.2;
const LARGEST_AREA = 0.985;
/** Share of one picture edge that the sheet may touch and still count as seen whole. */
const TOUCH = 0.04;
/** Edges nearer than this to the picture's own direction (radians, 0.8 degrees) are those of a scan. */
const SQUARE = 0.014;
/** A sheet's edge rises by this share of the contrast within three small pixels; a shadow's edge is soft. */
const SHARP = 0.5;
/** … and by this share within two pixels of the large one: shadows and noise do not. */
const EDGE_RISE = 0.15;
/** Light on the sheet falls off by less than this share over two small pixels, even at a shadow's edge. */
const FALL_OFF = 0.14;
/** Places along each edge where the sheet's border is measured. */
const PLACES = 80;

interface Small {
  width: number;
  height: number;
  step: number;
  values: Float32Array;
}

interface EdgeLine {
  /** Point on the line and its direction. */
  x: number;
  y: number;
  dx: number;
  dy: number;
}

/** Finds the sheet of paper on a darker table. */
export function sheetEdges(image: GrayImage): SheetEdges {
  if (Math.min(image.width, image.height) < 64) return { kind: 'none' };
  const small = shrunk(image);
  const table = tableCut(small);
  if (table === null) return { kind: 'none' };
  const bright = largestBright(small, table.cut);
  const grown = grownTo(bright.mask, small);
  // Light that falls off softly all over, with no sharp edge to stop at, is a scan in a shadow.
  if (grown.count > LARGEST_AREA * small.width * small.height) return { kind: 'none' };
  // A sheet half in shadow is as dark there as a table in the light: its edges tell, not its brightness.
  const lit = quadOf(image, small, grown, table.contrast);
  return lit.kind === 'none' ? quadOf(image, small, bright, table.contrast) : lit;
}

/** The sheet as one bright piece of the small picture, with its edges found in the large one. */
function quadOf(
  image: GrayImage,
  small: Small,
  sheet: { mask: Uint8Array; count: number },
  contrast: number,
): SheetEdges {
  const area = sheet.count / (small.width * small.height);
  if (area < LEAST_AREA || area > LARGEST_AREA) return { kind: 'none' };
  if (sharpness(sheet.mask, small) < SHARP * contrast) return { kind: 'none' };
  const touched = touches(sheet.mask, small);
  const corners = roughCorners(sheet.mask, small);
  if (touched.some((share) => share > TOUCH)) {
    const free = [0, 1, 2, 3].filter((side) => touched[side]! <= TOUCH);
    return free.every((side) => squareToPicture(corners, side)) ? { kind: 'none' } : { kind: 'cut' };
  }
  if (quadArea(corners) === 0 || sheet.count / quadArea(corners) < 0.9 || sheet.count / quadArea(corners) > 1.12)
    return { kind: 'none' };
  const scaled = corners.map((p) => ({ x: (p.x + 0.5) * small.step, y: (p.y + 0.5) * small.step }));
  const lines = [0, 1, 2, 3].map((side) => refinedEdge(image, scaled, side, 2 * small.step + 4, EDGE_RISE * contrast));
  if (lines.some((line) => line === null)) return { kind: 'none' };
  const exact = [0, 1, 2, 3].map((k) => crossing(lines[(k + 3) % 4]!, lines[k]!));
  return exact.some((p) => p === null) ? { kind: 'none' } : { kind: 'quad', corners: exact as Point[] };
}

function shrunk(image: GrayImage): Small {
  const step = Math.max(1, Math.ceil(Math.max(image.width, image.height) / SMALL));
  const width = Math.floor(image.width / step);
  const height = Math.floor(image.height / step);
  const every = Math.max(1, Math.ceil(step / 3));
  const looked = Math.ceil(step / every) ** 2;
  const values = new Float32Array(width * height);
  // Row by row of the large picture, as it lies in memory.
  for (let y = 0; y < height; y += 1) {
    const row = y * width;
    for (let dy = 0; dy < step; dy += every)
      for (let x = 0, at = (y * step + dy) * image.width; x < width; x += 1, at += step) {
        let sum = 0;
        for (let i = at; i < at + step; i += every) sum += image.data[i]!;
        values[row + x]! += sum;
      }
    for (let x = 0; x < width; x += 1) values[row + x]! /= looked;
  }
  return { width, height, step, values };
}

/** Gray level between table and sheet (Otsu 1979 on the small picture); null when the rim is as bright as the middle. */
function tableCut(small: Small): { cut: number; contrast: number } | null {
  const counts = new Int32Array(256);
  const n = small.values.length;
  for (let i = 0; i < n; i += 1) counts[Math.round(small.values[i]!)]! += 1;
  let total = 0;
  for (let g = 0; g < 256; g += 1) total += g * counts[g]!;
  let [below, sum, best, cut, darkMean, brightMean] = [0, 0, -1, 0, 0, 0];
  for (let g = 0; g < 255; g += 1) {
    below += counts[g]!;
    sum += g * counts[g]!;
    if (below === 0 || below === n) continue;
    const dark = sum / below;
    const bright = (total - sum) / (n - below);
    const between = below * (n - below) * (bright - dark) ** 2;
    if (between > best) [best, cut, darkMean, brightMean] = [between, g + 0.5, dark, bright];
  }
  if (brightMean - darkMean < CONTRAST) return null;
  const rim = rimValues(small);
  const dark = rim.filter((v) => v < cut).length / rim.length;
  return median(rim)! < cut || dark > 0.2 ? { cut, contrast: brightMean - darkMean } : null;
}

/** Usual rise of gray across the border of the mask, over three small pixels. */
function sharpness(mask: Uint8Array, { width, height, values }: Small): number {
  const rises: number[] = [];
  for (let y = 1; y + 1 < height; y += 1)
    for (let x = 1; x + 1 < width; x += 1) {
      const i = y * width + x;
      if (!mask[i] || (mask[i - 1] && mask[i + 1] && mask[i - width] && mask[i + width])) continue;
      rises.push(
        Math.max(Math.abs(values[i + 1]! - values[i - 1]!), Math.abs(values[i + width]! - values[i - width]!)),
      );
    }
  return median(rises) ?? 0;
}

function rimValues(small: Small): number[] {
  const { width, height, values } = small;
  const rim: number[] = [];
  for (let x = 0; x < width; x += 1) rim.push(values[x]!, values[(height - 1) * width + x]!);
  for (let y = 1; y < height - 1; y += 1) rim.push(values[y * width]!, values[y * width + width - 1]!);
  return rim;
}

function largestBright(small: Small, cut: number): { mask: Uint8Array; count: number } {
  const { width, height, values } = small;
  const seen = new Uint8Array(values.length);
  let best: number[] = [];
  for (let start = 0; start < values.length; start += 1) {
    if (seen[start] || values[start]! < cut) continue;
    const piece = [start];
    seen[start] = 1;
    for (let k = 0; k < piece.length; k += 1) {
      const i = piece[k]!;
      const x = i % width;
      for (const j of [x > 0 ? i - 1 : -1, x < width - 1 ? i + 1 : -1, i - width, i + width]) {
        if (j < 0 || j >= width * height || seen[j] || values[j]! < cut) continue;
        seen[j] = 1;
        piece.push(j);
      }
    }
    if (piece.length > best.length) best = piece;
  }
  const mask = new Uint8Array(values.length);
  for (const i of best) mask[i] = 1;
  return { mask, count: filled(mask, width, height) };
}

/** The piece grown over paper in shadow: over pixels that are hardly darker than all around them. */
function grownTo(mask: Uint8Array, small: Small): { mask: Uint8Array; count: number } {
  const { width, height, values } = small;
  const grown = mask.slice();
  const around = brightestAround(small);
  const waiting: number[] = [];
  for (let i = 0; i < grown.length; i += 1) if (grown[i]) waiting.push(i);
  while (waiting.length > 0) {
    const i = waiting.pop()!;
    const x = i % width;
    for (const j of [x > 0 ? i - 1 : -1, x < width - 1 ? i + 1 : -1, i - width, i + width]) {
      if (j < 0 || j >= grown.length || grown[j] || values[j]! < (1 - FALL_OFF) * around[j]!) continue;
      grown[j] = 1;
      waiting.push(j);
    }
  }
  return { mask: grown, count: filled(grown, width, height) };
}

/** Brightest value within two small pixels. */
function brightestAround({ width, values }: Small): Float32Array {
  const along = values.slice();
  for (let i = 0; i < values.length; i += 1) {
    const x = i % width;
    for (let d = Math.max(-2, -x); d <= Math.min(2, width - 1 - x); d += 1)
      along[i] = Math.max(along[i]!, values[i + d]!);
  }
  const result = along.slice();
  for (let i = 0; i < values.length; i += 1)
    for (let d = -2; d <= 2; d += 1) {
      const j = i + d * width;
      if (j >= 0 && j < values.length) result[i] = Math.max(result[i]!, along[j]!);
    }
  return result;
}

/** Fills what lies between the first and last pixel of each row (writing is dark too); answers the count. */
function filled(mask: Uint8Array, width: number, height: number): number {
  let count = 0;
  for (let y = 0; y < height; y += 1) {
    let first = -1;
    let last = -1;
    for (let x = 0; x < width; x += 1)
      if (mask[y * width + x]) {
        if (first < 0) first = x;
        last = x;
      }
    if (first < 0) continue;
    mask.fill(1, y * width + first, y * width + last + 1);
    count += last - first + 1;
  }
  return count;
}

/** Share of the top, right, bottom, left edge of the picture that the sheet touches. */
function touches(mask: Uint8Array, { width, height }: Small): number[] {
  let [top, right, bottom, left] = [0, 0, 0, 0];
  for (let x = 0; x < width; x += 1) {
    top += mask[x]!;
    bottom += mask[(height - 1) * width + x]!;
  }
  for (let y = 0; y < height; y += 1) {
    left += mask[y * width]!;
    right += mask[y * width + width - 1]!;
  }
  return [top / width, right / height, bottom / width, left / height];
}

/** The sheet's outermost points along the diagonals: top left, top right, bottom right, bottom left. */
function roughCorners(mask: Uint8Array, { width, height }: Small): Point[] {
  const best = [Infinity, -Infinity, -Infinity, Infinity];
  const corners: Point[] = [0, 1, 2, 3].map(() => ({ x: 0, y: 0 }));
  for (let y = 0; y < height; y += 1)
    for (let x = 0; x < width; x += 1) {
      if (!mask[y * width + x]) continue;
      const sum = x + y;
      const difference = x - y;
      if (sum < best[0]!) [best[0], corners[0]] = [sum, { x, y }];
      if (difference > best[1]!) [best[1], corners[1]] = [difference, { x, y }];
      if (sum > best[2]!) [best[2], corners[2]] = [sum, { x, y }];
      if (difference < best[3]!) [best[3], corners[3]] = [difference, { x, y }];
    }
  return corners;
}

function quadArea(p: readonly Point[]): number {
  let twice = 0;
  for (let k = 0; k < 4; k += 1) twice += p[k]!.x * p[(k + 1) % 4]!.y - p[(k + 1) % 4]!.x * p[k]!.y;
  return Math.abs(twice) / 2;
}

/** Whether a side (0 top, 1 right, 2 bottom, 3 left) runs along the picture's own direction. */
function squareToPicture(corners: readonly Point[], side: number): boolean {
  const a = corners[side]!;
  const b = corners[(side + 1) % 4]!;
  const [dx, dy] = [Math.abs(b.x - a.x), Math.abs(b.y - a.y)];
  return side % 2 === 0 ? dy <= SQUARE * dx + 1 : dx <= SQUARE * dy + 1;
}

/** Line through the steepest rise of gray along the normal at many places of one side; outliers dropped twice. */
function refinedEdge(
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
    const fit = fitLine(along, offsets);
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

function fitLine(xs: readonly number[], ys: readonly number[]): { slope: number; intercept: number } {
  const n = xs.length;
  const mx = xs.reduce((p, q) => p + q, 0) / n;
  const my = ys.reduce((p, q) => p + q, 0) / n;
  let [sxx, sxy] = [0, 0];
  for (let i = 0; i < n; i += 1) {
    sxx += (xs[i]! - mx) ** 2;
    sxy += (xs[i]! - mx) * (ys[i]! - my);
  }
  const slope = sxx === 0 ? 0 : sxy / sxx;
  return { slope, intercept: my - slope * mx };
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

function crossing(a: EdgeLine, b: EdgeLine): Point | null {
  const det = a.dx * b.dy - a.dy * b.dx;
  if (Math.abs(det) < 1e-6) return null;
  const t = ((b.x - a.x) * b.dy - (b.y - a.y) * b.dx) / det;
  return { x: a.x + t * a.dx, y: a.y + t * a.dy };
}
