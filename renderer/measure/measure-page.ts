import { corrected } from './corrections/apply.ts';
import { cutInk } from './corrections/cuts.ts';
import { composed, IDENTITY } from './sheet/homography.ts';
import type { Homography } from './sheet/homography.ts';
import { findMarks } from './sheet/corner-mark-search.ts';
import { contrastOf, FAINT } from './image/contrast-of-ink.ts';
import { stretched } from './image/stretched.ts';
import { fastStages } from './image/fast-stages.ts';
import { printedOf } from './image/ruling-bands.ts';
import type { Printed } from './image/ruling-bands.ts';
import type { PixelStages } from './image/pixel-stages.ts';
import { quarterTurned } from './sheet/turn.ts';
import type { SecondThread } from './image/wasm/thread-port.ts';

import { inkOf } from './image/ink.ts';
import type { Ink } from './image/ink.ts';
import { frameOf } from './lines/frame.ts';
import type { Frame } from './lines/frame.ts';
import { layoutOf } from './lines/page-layout.ts';
import type { Layout } from './lines/page-layout.ts';
import { resultOf, untrusted } from './result.ts';
import { sheetOf, sheetOfMarks } from './sheet/sheet.ts';
import type { Sheet } from './sheet/sheet.ts';
import type { GrayImage, PageInfo, PageResult, PageWarning } from './types.ts';
import type { MeasureOptions, OnProgress } from './measure-options.ts';
import { MM_PER_INCH } from './units.ts';
import { WARNINGS } from './trust/warnings.ts';

/** Pictures smaller than this on a side hold no page: 40 px are an inch at 40 dpi. */
const LEAST_SIDE = 40;
/** Paper is brighter than this even in a bad photo. */
const DARK = 60;
/** Pixels looked at to tell that. */
const SAMPLES = 5000;

/**
 * A page read as far as no correction reaches: sheet, ink, lines and words. Its pixels are lent: it serves until the
 * next page is read. Or the answer, where there is nothing to measure.
 */
export type ReadPage =
  | { kind: 'nothing'; result: PageResult }
  | {
      kind: 'read';
      sheet: Sheet;
      ink: Ink;
      frame: Frame;
      layout: Layout;
      page: PageInfo;
      contrast: number | null;
    };

/**
 * Measures one page of handwriting.
 * @param gray the page as gray bytes (`width * height` of them)
 * @param options scale, text, corrections, seed
 * @param onProgress told between stages; an exception from it stops the measurement
 * @param second a second thread for the stages that touch every pixel
 * @throws RangeError when the buffer does not fit width and height
 */
export function measurePage(
  gray: GrayImage,
  options: MeasureOptions,
  onProgress?: OnProgress,
  second: SecondThread | null = null,
): PageResult {
  return measureRead(readPage(gray, options, onProgress, second), options, onProgress);
}

/** The first part of `measurePage`: what scale and turn decide, without text and corrections. */
export function readPage(
  gray: GrayImage,
  options: Pick<MeasureOptions, 'scale' | 'quarterTurns'>,
  onProgress?: OnProgress,
  second: SecondThread | null = null,
): ReadPage {
  if (gray.data.length !== gray.width * gray.height) throw new RangeError('The picture does not fit its size.');
  const tell = onProgress ?? ((): void => undefined);
  const none = (warnings: PageWarning[]): ReadPage => ({ kind: 'nothing', result: nothing(gray, options, warnings) });
  if (Math.min(gray.width, gray.height) < LEAST_SIDE) return none([WARNINGS.tooSmall]);
  if (isDark(gray)) return none([WARNINGS.allBlack]);
  tell('Looking for the sheet', 0);
  const turned = quarterTurned(gray, options.quarterTurns ?? 0);
  let sheet = sheetOf(turned.image, options.scale);
  if (sheet.refused) return none(sheet.warnings);
  tell('Parting ink from paper', 0.1);
  let look = firstLook(sheet.image, sheet.pxPerMm, second);
  const marks = findMarks(look.first, sheet.image.width, sheet.image.height, look.stages.rims());
  if (marks) {
    sheet = sheetOfMarks(sheet, marks);
    if (sheet.refused) return none(sheet.warnings);
    look = firstLook(sheet.image, sheet.pxPerMm, second);
  }
  const { pxPerMm } = sheet;
  if (pxPerMm === null || !look.printed) return none([...sheet.warnings, WARNINGS.noScale]);
  tell('Taking out printed lines', 0.5);
  let ink = inkOf(sheet.image, look.stages, look.printed);
  const contrast = contrastOf(ink);
  if (contrast !== null && contrast < FAINT) {
    // Written faintly: what a threshold made for pens left of it is broken.
    const bright = stretched(sheet.image, ink.levels, contrast);
    const again = firstLook(bright, pxPerMm, second);
    ink = inkOf(bright, again.stages, again.printed!);
    sheet = { ...sheet, image: bright };
  }
  tell('Reading lines and words', 0.7);
  const frame = frameOf(sheet.image.width, sheet.image.height, pxPerMm, ink.rulings.angle ?? 0);
  const layout = layoutOf(sheet.image, ink, frame);
  return { kind: 'read', sheet, ink, frame, layout, page: pageInfo(sheet, frame, turned.toPicture), contrast };
}

/** The first threshold of a picture, and beside it its printed lines, where the scale is known. */
function firstLook(
  image: GrayImage,
  pxPerMm: number | null,
  second: SecondThread | null,
): { stages: PixelStages; first: Uint8Array; printed: Printed | null } {
  const stages = fastStages(image, second);
  let printed: Printed | null = null;
  const votes = pxPerMm === null ? null : stages.votes(pxPerMm);
  const first = stages.threshold(() => {
    if (votes) printed = printedOf(image, votes, pxPerMm!);
  });
  return { stages, first, printed };
}

/** The second part of `measurePage`: text and corrections. A read page may be measured any number of times. */
export function measureRead(read: ReadPage, options: MeasureOptions, onProgress?: OnProgress): PageResult {
  if (read.kind === 'nothing') return read.result;
  const tell = onProgress ?? ((): void => undefined);
  const { sheet, frame, page, contrast } = read;
  let { ink, layout } = read;
  const corrections = options.corrections ?? [];
  const cut = cutInk(ink, layout, corrections);
  if (cut) {
    ink = cut;
    layout = layoutOf(sheet.image, ink, frame);
  }
  layout = corrected(layout, corrections);
  tell('Measuring', 0.85);
  const result = resultOf(sheet.image, page, ink, layout, options, sheet.warnings, contrast);
  tell('Done', 1);
  return result;
}

/** Size, turn and the map back to the picture. */
function pageInfo(sheet: Sheet, frame: Frame, toGiven: Homography): PageInfo {
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
    dpi: pxPerMm * MM_PER_INCH,
    rotationDeg: sheet.turnDeg + (frame.angle * 180) / Math.PI,
    scaleSource: sheet.scaleSource,
    rulingMm: null,
    toPicture: composed(toGiven, composed(sheet.toPicture, toSheet)),
  };
}

/** A picture that holds nothing to measure, with the reason. */
function nothing(gray: GrayImage, options: Pick<MeasureOptions, 'scale'>, warnings: PageWarning[]): PageResult {
  const px = options.scale?.pxPerMm ?? null;
  const page: PageInfo = {
    widthMm: px === null ? null : gray.width / px,
    heightMm: px === null ? null : gray.height / px,
    dpi: px === null ? null : px * MM_PER_INCH,
    rotationDeg: 0,
    scaleSource: options.scale?.source ?? null,
    rulingMm: null,
    toPicture: px === null ? IDENTITY : [px, 0, 0, 0, px, 0, 0, 0, 1],
  };
  return untrusted(page, warnings);
}

/** Whether the picture is dark all over: a lid left open, a covered lens. */
function isDark(gray: GrayImage): boolean {
  const step = Math.max(1, Math.floor(gray.data.length / SAMPLES));
  let bright = 0;
  let n = 0;
  for (let i = 0; i < gray.data.length; i += step) {
    if (gray.data[i]! > DARK) bright += 1;
    n += 1;
  }
  return bright < n * 0.02;
}
