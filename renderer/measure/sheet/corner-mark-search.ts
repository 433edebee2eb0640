import { CORNER_MARK } from './corner-marks.ts';
import { connectedComponents } from '../image/components.ts';
import { inkRuns } from '../image/runs.ts';
import type { Runs } from '../image/runs.ts';
import { holes } from '../image/holes.ts';
import { PAPERS } from './sheet-edges.ts';
import type { Paper } from './sheet-edges.ts';
import type { Point } from './homography.ts';

/** Corner marks of our own sheets as found in a picture. */
export interface FoundMarks {
  /** Centers: top left, top right, bottom right, bottom left of the picture. */
  centers: Point[];
  /** Which of them is the one with the hole. */
  hollow: number;
  paper: Paper;
  /** Side of the marks, pixels. */
  sidePx: number;
}

/** A mark's box fills to at least this share (the one with the hole: 0.84). */
const FILL = 0.72;
/** Half width of the cross in samples of a 900th of the picture's short side, every how many rows they
 * are looked for, and how many crosses a mark has at least. */
export const CROSS_SAMPLES = 3;
export const CROSS_ROWS = 3;
const LEAST_SOLID = 4;
/** Width over height of a mark in a tilted photo. */
const SQUARE = 1.3;
/** The marks of one page differ in size by at most this factor (perspective). */
const ALIKE = 1.5;
/** The ratio of the marks' rectangle may differ from a sheet's by this share. */
const RATIO = 0.05;

/**
 * Finds four square marks near the corners; null when there are not four that fit a known sheet.
 * @param quarters what `rims` counted
 */
export function findMarks(
  ink: Uint8Array,
  width: number,
  height: number,
  quarters: readonly number[] = rims(ink, width, height),
): FoundMarks | null {
  if (quarters.some((crosses) => crosses < LEAST_SOLID)) return null;
  const runs = inkRuns(ink, width, height);
  const pieces = connectedComponents(runs, 1);
  const least = Math.min(width, height) / 150;
  const squares: { center: Point; side: number; component: number }[] = [];
  const sums = centroidSums(runs, pieces.labels, pieces.count);
  for (let c = 0; c < pieces.count; c += 1) {
    const w = pieces.right[c]! - pieces.left[c]!;
    const h = pieces.bottom[c]! - pieces.top[c]!;
    if (Math.min(w, h) < Math.max(least, 10) || w > SQUARE * h || h > SQUARE * w) continue;
    if (pieces.area[c]! < FILL * w * h) continue;
    const center = { x: sums.x[c]! / pieces.area[c]!, y: sums.y[c]! / pieces.area[c]! };
    squares.push({ center, side: Math.sqrt(w * h), component: c });
  }
  if (squares.length < 4) return null;
  const corner = (sx: number, sy: number): (typeof squares)[number] =>
    squares.reduce((best, s) =>
      sx * s.center.x + sy * s.center.y < sx * best.center.x + sy * best.center.y ? s : best,
    );
  const four = [corner(1, 1), corner(-1, 1), corner(-1, -1), corner(1, -1)];
  if (new Set(four.map((s) => s.component)).size < 4) return null;
  const sides = four.map((s) => s.side);
  if (Math.max(...sides) > ALIKE * Math.min(...sides)) return null;
  const hollow = hollowOne(
    runs,
    pieces,
    four.map((s) => s.component),
    Math.min(...sides),
  );
  const sidePx = sides.reduce((a, b) => a + b, 0) / 4;
  const paper = paperOfMarks(
    four.map((s) => s.center),
    sidePx,
  );
  return hollow === null || paper === null ? null : { centers: four.map((s) => s.center), hollow, paper, sidePx };
}

/** Distance of the samples of a cross, pixels. */
export function crossStep(width: number, height: number): number {
  return Math.max(1, Math.round(Math.min(width, height) / 900));
}

/**
 * A quick look how often each quarter of the picture (top left, top right, bottom left, bottom right) has solid ink as
 * large as a mark's rim: crosses of samples that are all ink. The first threshold leaves the middle of a solid square
 * white, so its rim is what is looked for.
 */
export function rims(ink: Uint8Array, width: number, height: number): number[] {
  const step = crossStep(width, height);
  const reach = CROSS_SAMPLES * step;
  const found = [0, 0, 0, 0];
  for (let y = reach; y < height - reach; y += CROSS_ROWS * step)
    for (let x = reach; x < width - reach; x += step) {
      const i = y * width + x;
      if (ink[i] !== 1) continue;
      let solid = true;
      for (let d = -CROSS_SAMPLES; d <= CROSS_SAMPLES && solid; d += 1)
        solid = ink[i + d * step] === 1 && ink[i + d * step * width] === 1;
      if (solid) found[(y < height / 2 ? 0 : 2) + (x < width / 2 ? 0 : 1)]! += 1;
    }
  return found;
}

function centroidSums(runs: Runs, labels: Int32Array, count: number): { x: Float64Array; y: Float64Array } {
  const x = new Float64Array(count);
  const y = new Float64Array(count);
  for (let row = 0; row < runs.height; row += 1)
    for (let r = runs.rows[row]!; r < runs.rows[row + 1]!; r += 1) {
      const label = labels[r]!;
      const length = runs.to[r]! - runs.from[r]!;
      x[label] = x[label]! + (length * (runs.from[r]! + runs.to[r]!)) / 2;
      y[label] = y[label]! + length * (row + 0.5);
    }
  return { x, y };
}

/** The only mark with one hole of the right size. */
function hollowOne(
  runs: Runs,
  pieces: ReturnType<typeof connectedComponents>,
  components: number[],
  side: number,
): number | null {
  const wanted = (side * CORNER_MARK.holeMm) / CORNER_MARK.sideMm;
  const found = holes(runs, pieces, 0.3 * wanted * wanted)
    .filter((hole) => hole.area < 2.5 * wanted * wanted)
    .map((hole) => components.indexOf(hole.component))
    .filter((k) => k >= 0);
  return found.length === 1 ? found[0]! : null;
}

function paperOfMarks(p: readonly Point[], sidePx: number): Paper | null {
  const side = (i: number, j: number): number => Math.hypot(p[i]!.x - p[j]!.x, p[i]!.y - p[j]!.y);
  const across = (side(0, 1) + side(3, 2)) / 2;
  const down = (side(0, 3) + side(1, 2)) / 2;
  const pxPerMm = sidePx / CORNER_MARK.sideMm;
  let best: Paper | null = null;
  let least = RATIO;
  for (const paper of PAPERS)
    for (const [w, h] of [
      [paper.widthMm, paper.heightMm],
      [paper.heightMm, paper.widthMm],
    ] as const) {
      const inner = [w - 2 * CORNER_MARK.insetMm, h - 2 * CORNER_MARK.insetMm] as const;
      const off = Math.abs(Math.log(down / across / (inner[1] / inner[0])));
      // The marks' own size tells A4 from A5 within a fifth.
      if (Math.abs(Math.log(across / pxPerMm / inner[0])) > 0.2 || off >= least) continue;
      [least, best] = [off, { name: paper.name, widthMm: w, heightMm: h }];
    }
  return best;
}
