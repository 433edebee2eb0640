import { composed, homographyOf, IDENTITY } from './homography.ts';
import type { Homography, Point } from './homography.ts';
import type { FoundMarks } from './corner-mark-search.ts';
import { paperOf, sheetRatio } from './sheet-edges.ts';
import { sheetEdges } from './quad.ts';
import { warped } from './warp.ts';
import { CORNER_MARK, PRINTED_BANDS } from './corner-marks.ts';
import { cleared } from '../image/cleared.ts';
import type { GrayImage, PageWarning, Scale, ScaleSource } from '../types.ts';
import { WARNINGS } from '../trust/warnings.ts';

/** The sheet as an even picture: what all later stages work on. */
export interface Sheet {
  image: GrayImage;
  /** Pixels of `image` for one mm; null when no scale is known. */
  pxPerMm: number | null;
  scaleSource: ScaleSource | 'paper-size' | null;
  /** From pixels of `image` to pixels of the picture as given. */
  toPicture: Homography;
  /** Turn that was taken out together with the perspective, degrees, + counter-clockwise. */
  turnDeg: number;
  /** Size of the sheet; null when its edges were not seen. */
  sizeMm: { widthMm: number; heightMm: number } | null;
  warnings: PageWarning[];
  /** A reason not to measure at all. */
  refused: boolean;
}

/** Two scales that differ by more than this share contradict each other (common practice, no source: axes off by over 1 %). */
export const SCALE_TOLERANCE = 0.01;
/** Rim of a photographed sheet left out, mm: its cut edge and its shadow. */
const RIM_MM = 1;

/** The sheet in a picture: all of it for a scan; straightened when it lies on a table and its four edges are seen. */
export function sheetOf(picture: GrayImage, scale: Scale | null): Sheet {
  const edges = sheetEdges(picture);
  const plain: Sheet = {
    image: picture,
    pxPerMm: scale?.pxPerMm ?? null,
    scaleSource: scale?.source ?? null,
    toPicture: IDENTITY,
    turnDeg: 0,
    sizeMm: null,
    warnings: [],
    refused: false,
  };
  if (edges.kind === 'none') return plain;
  if (edges.kind === 'cut') return { ...plain, warnings: [WARNINGS.edgeCut], refused: true };
  const { corners } = edges;
  const areaPx = quadArea(corners);
  const ratio = sheetRatio(corners, picture.width, picture.height);
  const paper = paperOf(ratio, scale ? Math.sqrt(areaPx) / scale.pxPerMm : null);
  if (paper) {
    const pxPerMm = Math.sqrt(areaPx / (paper.widthMm * paper.heightMm));
    const contradicts = scale && Math.abs(scale.pxPerMm / pxPerMm - 1) > SCALE_TOLERANCE && trusted(scale.source);
    return straightened(picture, corners, paper, pxPerMm, 'paper-size', contradicts ? [WARNINGS.scalePaper] : []);
  }
  if (!scale) return plain;
  const widthMm = Math.sqrt(areaPx / ratio) / scale.pxPerMm;
  const size = { widthMm, heightMm: widthMm * ratio };
  return straightened(picture, corners, size, scale.pxPerMm, scale.source, [WARNINGS.unknownPaper]);
}

/** A bar or two clicks were measured on the page itself; a camera's dpi is only nominal. */
function trusted(source: ScaleSource): boolean {
  return source === 'bar' || source === 'two-clicks';
}

/** Straightens by the corners of the sheet. */
function straightened(
  picture: GrayImage,
  corners: readonly Point[],
  size: { widthMm: number; heightMm: number },
  pxPerMm: number,
  scaleSource: Sheet['scaleSource'],
  warnings: PageWarning[],
): Sheet {
  const width = Math.max(1, Math.round(size.widthMm * pxPerMm));
  const height = Math.max(1, Math.round(size.heightMm * pxPerMm));
  const flat = [
    { x: 0, y: 0 },
    { x: size.widthMm * pxPerMm, y: 0 },
    { x: size.widthMm * pxPerMm, y: size.heightMm * pxPerMm },
    { x: 0, y: size.heightMm * pxPerMm },
  ];
  const map = homographyOf(flat, corners) ?? IDENTITY;
  return {
    image: warped(picture, map, width, height, RIM_MM * pxPerMm),
    pxPerMm,
    scaleSource,
    toPicture: map,
    turnDeg: turnOf(map, picture),
    sizeMm: size,
    warnings,
    refused: false,
  };
}

/**
 * Turn of the sheet about the camera's axis, degrees, + counter-clockwise. The rows of a map are a turn seen under two
 * tilts; with the tilt about the picture's upright axis outermost, the second row holds the turn alone.
 */
function turnOf(map: Homography, picture: { width: number; height: number }): number {
  const middle = picture.height / 2;
  return (Math.atan2(-(map[3]! - middle * map[6]!), map[4]! - middle * map[7]!) * 180) / Math.PI;
}

function quadArea(p: readonly Point[]): number {
  let twice = 0;
  for (let k = 0; k < 4; k += 1) twice += p[k]!.x * p[(k + 1) % 4]!.y - p[(k + 1) % 4]!.x * p[k]!.y;
  return Math.abs(twice) / 2;
}

/** Opposite sides of the marks' rectangle that differ by more than this share are seen under a tilt. */
const TILTED = 0.004;

/** Whether the marks lie further apart across than down (or the other way) although the sheet is not seen under a tilt. */
function axesDiffer(p: readonly Point[], paper: { widthMm: number; heightMm: number }): boolean {
  const side = (i: number, j: number): number => Math.hypot(p[i]!.x - p[j]!.x, p[i]!.y - p[j]!.y);
  const [top, bottom, left, right] = [side(0, 1), side(3, 2), side(0, 3), side(1, 2)];
  if (Math.abs(top / bottom - 1) > TILTED || Math.abs(left / right - 1) > TILTED) return false;
  const inner = (sizeMm: number): number => sizeMm - 2 * CORNER_MARK.insetMm;
  const across = (top + bottom) / inner(paper.widthMm);
  const down = (left + right) / inner(paper.heightMm);
  return Math.abs(across / down - 1) > SCALE_TOLERANCE;
}

/**
 * The sheet by its corner marks: scale, turn and perspective follow from them.
 * @param print 'with-print' leaves what is printed above and below the writing in the picture
 */
export function sheetOfMarks(sheet: Sheet, marks: FoundMarks, print: 'cleared' | 'with-print' = 'cleared'): Sheet {
  // The hollow mark is the sheet's top left: a sheet that lies on its side or top is turned upright with the rest.
  const lying = marks.hollow % 2 === 1;
  if (lying && marks.paper.widthMm < marks.paper.heightMm)
    return { ...sheet, warnings: [...sheet.warnings, WARNINGS.mirrored], refused: true };
  const centers = marks.centers.map((_, i) => marks.centers[(i + marks.hollow) % 4]!);
  const paper = lying
    ? { name: marks.paper.name, widthMm: marks.paper.heightMm, heightMm: marks.paper.widthMm }
    : marks.paper;
  const inset = CORNER_MARK.insetMm;
  const places = [
    { x: inset, y: inset },
    { x: paper.widthMm - inset, y: inset },
    { x: paper.widthMm - inset, y: paper.heightMm - inset },
    { x: inset, y: paper.heightMm - inset },
  ];
  const areaMm = (paper.widthMm - 2 * inset) * (paper.heightMm - 2 * inset);
  const pxPerMm = Math.sqrt(quadArea(centers) / areaMm);
  const flat = places.map((p) => ({ x: p.x * pxPerMm, y: p.y * pxPerMm }));
  const map = homographyOf(flat, centers) ?? IDENTITY;
  const width = Math.round(paper.widthMm * pxPerMm);
  const height = Math.round(paper.heightMm * pxPerMm);
  const known = sheet.pxPerMm;
  const contradicts =
    known !== null && sheet.scaleSource !== 'paper-size' && Math.abs(known / pxPerMm - 1) > SCALE_TOLERANCE;
  const image = warped(sheet.image, map, width, height, RIM_MM * pxPerMm);
  return {
    // Title, marks and check bar are print, not writing.
    image: print === 'cleared' ? cleared(image, PRINTED_BANDS.headMm * pxPerMm, PRINTED_BANDS.footMm * pxPerMm) : image,
    pxPerMm: known !== null && sheet.scaleSource !== 'paper-size' && sheet.scaleSource !== 'file-dpi' ? known : pxPerMm,
    scaleSource:
      known !== null && sheet.scaleSource !== 'paper-size' && sheet.scaleSource !== 'file-dpi'
        ? sheet.scaleSource
        : 'corner-marks',
    toPicture: composed(sheet.toPicture, map),
    turnDeg: sheet.turnDeg + turnOf(map, sheet.image),
    sizeMm: paper,
    warnings: [
      ...sheet.warnings,
      ...(contradicts ? [WARNINGS.scaleMarks] : []),
      ...(axesDiffer(centers, paper) ? [WARNINGS.axesDiffer] : []),
    ],
    refused: sheet.refused,
  };
}
