import { fastStages } from '../image/fast-stages.ts';
import { measureRead, readPage } from '../measure-page.ts';
import { findMarks } from '../sheet/corner-mark-search.ts';
import { CORNER_MARK } from '../sheet/corner-marks.ts';
import { partOfSheet } from '../sheet/sheet-part.ts';
import { sheetOf, sheetOfMarks } from '../sheet/sheet.ts';
import type { GrayImage, PageResult, Scale } from '../types.ts';
import { LOG_LAYOUT, logLayout } from './log-layout.ts';
import { codeOfText, type PageCode } from './page-code.ts';
import { painted, type PrintedOn } from './painted.ts';
import { meanOf, readCode } from './read-code.ts';
import { readMarks, type ReadField } from './read-marks.ts';
import { wordsInCells } from './words-in-cells.ts';

/** A field as read; a doubtful one with its part of the straight sheet, for a person to look at. */
export type SeenField = Pick<ReadField, 'row' | 'field' | 'value' | 'doubt'> & { part: GrayImage | null };

/** Why a picture is none of our sheets that come back, or one that cannot be read. */
export type NotRead = 'edge-cut' | 'mirrored' | 'no-marks' | 'no-code' | 'unreadable' | 'other-layout';

export type PrintedPage =
  | { kind: 'not-read'; why: NotRead }
  | { kind: 'log'; text: string; code: PageCode; fields: SeenField[] }
  /** `measured`: what was written on it; null where it is not known what was printed on it. */
  | { kind: 'practice'; text: string; code: PageCode; measured: PageResult | null };

/**
 * Reads a sheet of ours that came back: its code by the corner marks, then its marks or its lines.
 * @param printedOn what is printed on a practice page, by its code: it is no writing
 */
export function readPrintedPage(
  picture: GrayImage,
  scale: Scale | null,
  printedOn: Readonly<Record<string, PrintedOn>>,
): PrintedPage {
  const notRead = (why: NotRead): PrintedPage => ({ kind: 'not-read', why });
  const whole = sheetOf(picture, scale);
  if (whole.refused) return notRead('edge-cut');
  const stages = fastStages(whole.image);
  const marks = findMarks(stages.threshold(), whole.image.width, whole.image.height, stages.rims());
  if (!marks) return notRead('no-marks');
  const sheet = sheetOfMarks(whole, marks, 'with-print');
  if (sheet.refused || !sheet.sizeMm) return notRead('mirrored');
  const { image, sizeMm } = sheet;
  // The sheet's own millimeters, whatever a bar or the file say of the picture's.
  const pxPerMm = image.width / sizeMm.widthMm;
  const read = readCode(image, pxPerMm, sizeMm);
  if (typeof read === 'string') return notRead(read === 'blank' ? 'no-code' : 'unreadable');
  const code = codeOfText(read.text);
  if (!code || code.layout !== LOG_LAYOUT) return notRead('other-layout');
  if (code.kind === 'log') {
    const fields = readMarks(
      image,
      pxPerMm,
      logLayout(sizeMm.widthMm, sizeMm.heightMm, code.few),
      blackOf(image, pxPerMm),
    );
    return { kind: 'log', text: read.text, code, fields: fields.map((field) => seen(field, image, pxPerMm)) };
  }
  const print = printedOn[read.text];
  if (!print) return { kind: 'practice', text: read.text, code, measured: null };
  const writing = painted(image, pxPerMm, print);
  const options = { scale: { pxPerMm, source: 'corner-marks' as const }, upright: true };
  const lines = readPage(writing, options);
  let measured = measureRead(lines, options);
  if (print.cellMm !== null)
    measured = measureRead(lines, { ...options, corrections: wordsInCells(measured, print.cellMm) });
  return { kind: 'practice', text: read.text, code, measured };
}

/** Gray of solid print: that of three corner marks; the one with the hole is left out. */
function blackOf(image: GrayImage, pxPerMm: number): number {
  const inset = CORNER_MARK.insetMm * pxPerMm;
  const places = [
    [image.width - inset, inset],
    [image.width - inset, image.height - inset],
    [inset, image.height - inset],
  ] as const;
  const grays = places.map(([x, y]) => meanOf(image, x, y, 0.5 * CORNER_MARK.sideMm * pxPerMm));
  return grays.sort((a, b) => a - b)[1]!;
}

function seen({ row, field, value, doubt, box }: ReadField, image: GrayImage, pxPerMm: number): SeenField {
  return { row, field, value, doubt, part: doubt ? partOfSheet(image, pxPerMm, box).part : null };
}
