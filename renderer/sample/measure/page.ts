import { composed } from './image/homography.ts';
import { findMarks } from './image/marks.ts';
import { sauvola } from './image/threshold.ts';
import { inkOf } from './ink.ts';
import { frameOf } from './layout/frame.ts';
import type { Frame } from './layout/frame.ts';
import { layoutOf } from './layout.ts';
import { resultOf } from './result.ts';
import { sheetOf, sheetOfMarks } from './sheet.ts';
import type { Sheet } from './sheet.ts';
import type { GrayImage, MeasureOptions, OnProgress, PageInfo, PageResult, PageWarning } from './types.ts';
import { METHOD_VERSION } from './version.ts';
import { WARNINGS } from './warnings.ts';

export const TIMES: Record<string, number> = {};
let last = 0;
function lap(name: string): void {
  const now = performance.now();
  TIMES[name] = now - last;
  last = now;
}

/** Pictures smaller than this on a side hold no page: 40 px are an inch at 40 dpi. */
const LEAST_SIDE = 40;

/**
 * Measures one page of handwriting.
 * @param gray the page as gray bytes (`width * height` of them)
 * @param options scale, text, corrections, seed
 * @param onProgress told between stages; an exception from it stops the measurement
 * @throws RangeError when the buffer does not fit width and height
 */
export function measurePage(gray: GrayImage, options: MeasureOptions, onProgress?: OnProgress): PageResult {
  if (gray.data.length !== gray.width * gray.height) throw new RangeError('The picture does not fit its size.');
  const tell = onProgress ?? ((): void => undefined);
  last = performance.now();
  if (Math.min(gray.width, gray.height) < LEAST_SIDE) return emptyResult(gray, options, [WARNINGS.tooSmall]);
  tell('Looking for the sheet', 0);
  let sheet = sheetOf(gray, options.scale);
  lap('sheet');
  if (sheet.refused) return emptyResult(gray, options, sheet.warnings);
  tell('Parting ink from paper', 0.1);
  let first = sauvola(sheet.image);
  lap('sauvola');
  const marks = findMarks(first, sheet.image.width, sheet.image.height);
  if (marks) {
    sheet = sheetOfMarks(sheet, marks);
    first = sauvola(sheet.image);
  }
  lap('marks');
  if (sheet.pxPerMm === null) return emptyResult(gray, options, [...sheet.warnings, WARNINGS.noScale]);
  const { pxPerMm } = sheet;
  tell('Taking out printed lines', 0.5);
  const ink = inkOf(sheet.image, first, pxPerMm);
  lap('ink');
  tell('Reading lines and words', 0.7);
  const frame = frameOf(sheet.image.width, sheet.image.height, pxPerMm, ink.rulings.angle ?? 0);
  const layout = layoutOf(sheet.image, ink, frame);
  lap('layout');
  tell('Measuring', 0.85);
  const page = pageInfo(sheet, frame);
  const result = resultOf(page, ink, layout, options, sheet.warnings);
  lap('result');
  tell('Done', 1);
  return result;
}

/** Size, turn and the map back to the picture. */
function pageInfo(sheet: Sheet, frame: Frame): PageInfo {
  const { pxPerMm } = frame;
  const toSheet = [
    pxPerMm * frame.cos,
    pxPerMm * frame.sin,
    frame.originX,
    -pxPerMm * frame.sin,
    pxPerMm * frame.cos,
    frame.originY,
    0,
    0,
    1,
  ];
  return {
    widthMm: sheet.sizeMm?.widthMm ?? sheet.image.width / pxPerMm,
    heightMm: sheet.sizeMm?.heightMm ?? sheet.image.height / pxPerMm,
    dpi: pxPerMm * 25.4,
    rotationDeg: sheet.turnDeg + (frame.angle * 180) / Math.PI,
    scaleSource: sheet.scaleSource,
    rulingMm: null,
    toPicture: composed(sheet.toPicture, toSheet),
  };
}

/** A page that holds nothing to measure, with the reason. */
function emptyResult(gray: GrayImage, options: MeasureOptions, warnings: PageWarning[]): PageResult {
  const scale = options.scale;
  const px = scale?.pxPerMm ?? null;
  return {
    version: METHOD_VERSION,
    page: {
      widthMm: px === null ? null : gray.width / px,
      heightMm: px === null ? null : gray.height / px,
      dpi: px === null ? null : px * 25.4,
      rotationDeg: 0,
      scaleSource: scale?.source ?? null,
      rulingMm: null,
      toPicture: px === null ? [1, 0, 0, 0, 1, 0, 0, 0, 1] : [px, 0, 0, 0, px, 0, 0, 0, 1],
    },
    lines: [],
    measures: [],
    warnings,
    textFits: null,
    darknessPercent: null,
    rulings: [],
    loops: [],
  };
}
