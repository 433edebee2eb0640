import { fastStages } from '../image/fast-stages.ts';
import { findMarks } from '../sheet/corner-mark-search.ts';
import { applied, composed } from '../sheet/homography.ts';
import type { Homography } from '../sheet/homography.ts';
import { partOfSheet } from '../sheet/sheet-part.ts';
import { sheetOf, sheetOfMarks } from '../sheet/sheet.ts';
import { quarterTurned } from '../sheet/turn.ts';
import type { GrayImage, PageWarning, Scale } from '../types.ts';
import { MM_PER_INCH } from '../units.ts';
import { spiralInk } from './spiral-ink.ts';
import type { InkOfSpiral } from './spiral-ink.ts';
import { readSpiral, rmsOf, SPIRAL_VERSION } from './spiral-measure.ts';
import type { ReadSpiral } from './spiral-measure.ts';
import { SPIRAL_SHEET, spiralPlaces } from './spiral-sheet-layout.ts';
import type { SpiralPlace } from './spiral-sheet-layout.ts';
import type { SheetSpiral, SpiralSheetResult } from './spiral-types.ts';

/** Darkness between that of the printed line and a pen's: what is paler is print. */
const PRINT_FLOOR = 1 - SPIRAL_SHEET.gray + 0.1;
/** A pen paler than this is hardly told from the printed line. */
const PALE_PEN = 0.5;
/** Points a turn of the spiral drawn over the picture. */
const SHOWN = 60;

const SHEETS_ONLY: PageWarning = {
  code: 'spiral-no-marks',
  message:
    'The four corner marks of the printed sheet were not seen, so the picture was taken for one spiral on plain paper. Scan the whole sheet to have both.',
};
const NO_SCALE: PageWarning = {
  code: 'no-scale',
  message:
    'Neither the corner marks of the printed sheet nor a scale was found, so nothing was measured. Scan the whole sheet, with all four corners.',
};
const PALE: PageWarning = {
  code: 'spiral-pale',
  message: 'The pen is hardly darker than the printed line, so the line may be read in parts only. Use a dark pen.',
};

/** Seconds that each spiral took, or null. */
export interface SpiralSeconds {
  traced: number | null;
  free: number | null;
}

/**
 * Measures our printed sheet of two spirals: scale, turn and perspective from its corner marks. Without marks, but with
 * a scale, the picture is one free spiral.
 */
export function measureSpiralSheet(
  picture: GrayImage,
  scale: Scale | null,
  seconds: SpiralSeconds,
  quarterTurns: 0 | 1 | 2 | 3 = 0,
): SpiralSheetResult {
  const turned = quarterTurned(picture, quarterTurns);
  let sheet = sheetOf(turned.image, scale);
  const nothing = (warnings: PageWarning[]): SpiralSheetResult => ({
    version: SPIRAL_VERSION,
    dpi: null,
    scaleSource: null,
    traced: null,
    free: null,
    warnings,
  });
  if (sheet.refused) return nothing(sheet.warnings);
  const stages = fastStages(sheet.image);
  const marks = findMarks(stages.threshold(), sheet.image.width, sheet.image.height, stages.rims());
  if (marks) sheet = sheetOfMarks(sheet, marks);
  if (sheet.refused) return nothing(sheet.warnings);
  const { image, pxPerMm } = sheet;
  if (pxPerMm === null) return nothing([...sheet.warnings, NO_SCALE]);
  const toPicture = composed(turned.toPicture, sheet.toPicture);
  const known = { version: SPIRAL_VERSION, dpi: pxPerMm * MM_PER_INCH, scaleSource: sheet.scaleSource };
  if (!marks || !sheet.sizeMm) {
    const free = shown(readSpiral(spiralInk(image, pxPerMm).ink, seconds.free), toPicture, pxPerMm, null);
    return { ...known, traced: null, free, warnings: [...sheet.warnings, SHEETS_ONLY] };
  }
  const places = spiralPlaces(sheet.sizeMm.widthMm, sheet.sizeMm.heightMm);
  const traced = inkIn(image, pxPerMm, places.traced, PRINT_FLOOR);
  const free = inkIn(image, pxPerMm, places.free, 0);
  const warnings = traced.ink.x.length > 0 && traced.darkness < PALE_PEN ? [PALE] : [];
  return {
    ...known,
    traced: shown(readSpiral(traced.ink, seconds.traced), toPicture, pxPerMm, places.traced),
    free: shown(readSpiral(free.ink, seconds.free), toPicture, pxPerMm, null),
    warnings: [...sheet.warnings, ...warnings],
  };
}

/** Ink of one place of the sheet, mm on the sheet. */
function inkIn(image: GrayImage, pxPerMm: number, place: SpiralPlace, floor: number): InkOfSpiral {
  const { part, left, top } = partOfSheet(image, pxPerMm, place);
  const { ink, darkness } = spiralInk(part, pxPerMm, floor);
  const [dx, dy] = [left / pxPerMm, top / pxPerMm];
  return { ink: { x: ink.x.map((x) => x + dx), y: ink.y.map((y) => y + dy) }, darkness };
}

/** A read spiral with what the window draws of it. @param printed the place of the printed one, where there is one */
function shown(
  { result, read }: ReadSpiral,
  toPicture: Homography,
  pxPerMm: number,
  printed: SpiralPlace | null,
): SheetSpiral {
  if (!read) return { ...result, fromPrintedRmsMm: null, followed: [], offsetsMm: [] };
  const { shape, line, wobble } = read;
  const at = (turn: number, offset: number): { x: number; y: number } => {
    const angle = 2 * Math.PI * turn * shape.sense;
    const radius = shape.start + shape.pitch * turn + offset;
    return { x: shape.centerX + radius * Math.cos(angle), y: shape.centerY + radius * Math.sin(angle) };
  };
  const followed: number[] = [];
  const [first, last] = [line.turnsAt[0]!, line.turnsAt.at(-1)!];
  for (let turn = first; turn <= last; turn += 1 / SHOWN) {
    const { x, y } = at(turn, 0);
    const px = applied(toPicture, x * pxPerMm, y * pxPerMm);
    followed.push(Math.round(px.x), Math.round(px.y));
  }
  const offsetsMm = wobble.map((value) => Math.round(100 * value) / 100);
  if (!printed) return { ...result, fromPrintedRmsMm: null, followed, offsetsMm };
  const { pitchMm } = SPIRAL_SHEET;
  const away = line.offsets.map((offset, i) => {
    const p = at(line.turnsAt[i]!, offset);
    const [dx, dy] = [p.x - printed.centerX, p.y - printed.centerY];
    const turns = Math.hypot(dx, dy) / pitchMm - Math.atan2(dy, dx) / (2 * Math.PI);
    return pitchMm * (turns - Math.round(turns));
  });
  return { ...result, fromPrintedRmsMm: rmsOf(away), followed, offsetsMm };
}
