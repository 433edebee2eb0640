import type { GrayImage } from '../types.ts';
import { type BrightPiece, grownTo, largestBright, roughCorners } from './bright-piece.ts';
import { crossing, refinedEdge } from './edge-line.ts';
import type { Point } from './homography.ts';
import { sharpness, shrunk, type SmallPicture, tableCut, touches } from './small-picture.ts';

/** Where the sheet lies in the picture. */
export type SheetEdges =
  /** No edges seen: the picture is the sheet (a flatbed scan). */
  | { kind: 'none' }
  /** All four edges seen: corners top left, top right, bottom right, bottom left. */
  | { kind: 'quad'; corners: Point[] }
  /** The sheet runs out of the picture while other edges are seen at an angle. */
  | { kind: 'cut' };

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
function quadOf(image: GrayImage, small: SmallPicture, sheet: BrightPiece, contrast: number): SheetEdges {
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
