import type { Ink } from '../image/ink.ts';
import type { Layout } from '../lines/page-layout.ts';
import type { ReadPage } from '../measures/measure.ts';
import { median } from '../../statistics/order-statistics.ts';
import { SCALE_TOLERANCE } from '../sheet/sheet.ts';
import type { GrayImage, PageWarning } from '../types.ts';
import type { MeasureOptions } from '../measure-options.ts';
import { FAINT } from '../image/contrast-of-ink.ts';
import { isUnusualScript } from './direction.ts';
import { printedLines } from './printed-lines.ts';
import { changeOfHand } from './several-hands.ts';
import {
  doubtWarning,
  faintWarning,
  handsWarning,
  printedWarning,
  WARNINGS,
  rulingWarning,
  sizeWarning,
} from './warnings.ts';
import { pitchOf, RULING_TOLERANCE, usualRuling } from './ruling-scale.ts';

/** Small letters needed for size and unevenness: 15 readings, half of them lost where letters touch. */
const LEAST_LETTERS = 15;
/** Small letters under this height in pixels are too coarse to measure well. */
const LEAST_PX = 12;
/** Fewer words than this say nothing about spacing or change of size. */
const LEAST_WORDS = 5;
/** Blur (sigma) from this share of the x-height on moves edges and closes loops. */
const BLURRED = 0.1;
/** Handwriting of adults has small letters between these heights, mm; beyond them the scale is doubted (common practice, no source). */
const SIZES_MM = { least: 0.6, most: 25 } as const;
/**
 * From this share of gaps expected to be taken for the wrong kind on, the words are doubted. Said and found agreed on 37
 * pages of two people: of 2,100 words 64 were expected to be wrong, 81 were.
 */
const DOUBTED_SHARE = 0.04;

/** What a page that was measured is questioned for. */
export function pageWarnings(
  image: GrayImage,
  read: ReadPage,
  ink: Ink,
  layout: Layout,
  options: MeasureOptions,
): PageWarning[] {
  const words = read.lines.reduce((sum, line) => sum + line.words.length, 0);
  if (words === 0) return [WARNINGS.blank];
  const warnings: PageWarning[] = [];
  if (words < LEAST_WORDS) warnings.push(WARNINGS.fewWords);
  const wrong = (read.wordDoubt ?? 0) * words;
  if (wrong > DOUBTED_SHARE * words && wrong > 0.5) warnings.push(doubtWarning(wrong));
  if (words >= LEAST_WORDS && smallLetters(read) < LEAST_LETTERS) warnings.push(WARNINGS.fewLetters);
  const printed = printedLines(read.lines);
  if (printed.length > 0) warnings.push(printedWarning(printed, read.lines.length));
  else {
    const other = changeOfHand(read.lines);
    if (other !== null) warnings.push(handsWarning(other));
  }
  if (isOtherScript(options.text)) warnings.push(WARNINGS.otherScript);
  else if (isUnusualScript(layout)) warnings.push(WARNINGS.unusualScript);
  const size = median(layout.sizes)!;
  if (size < LEAST_PX) warnings.push(WARNINGS.smallText);
  const sizeMm = size / layout.frame.pxPerMm;
  if (sizeMm < SIZES_MM.least || sizeMm > SIZES_MM.most) warnings.push(sizeWarning(sizeMm));
  if (isBlurred(ink, layout)) warnings.push(WARNINGS.blur);
  if (read.darknessPercent !== null && read.darknessPercent < 100 * FAINT)
    warnings.push(faintWarning(read.darknessPercent));
  const cut = layout.lines.some((line) =>
    line.blobs.some(({ blob }) => blob.left <= 1 || blob.right >= image.width - 1),
  );
  if (cut) warnings.push(WARNINGS.writingCut);
  return [...warnings, ...scaleWarnings(read, options)];
}

const smallLetters = ({ lines }: ReadPage): number =>
  lines.reduce((sum, { words }) => sum + words.reduce((n, word) => n + word.xHeightsMm.length, 0), 0);

/** Whether most letters of the text are of another script than the Latin one. */
function isOtherScript(text = ''): boolean {
  const letters = text.match(/\p{L}/gu) ?? [];
  return letters.filter((letter) => !/\p{Script=Latin}/u.test(letter)).length > letters.length / 2;
}

/** Whether the picture is too soft for its small letters. */
export function isBlurred(ink: Ink, layout: Layout): boolean {
  return ink.blurPx !== null && layout.sizes.length > 0 && ink.blurPx > BLURRED * median(layout.sizes)!;
}

/** The printed lines against the scale: their known distance, a usual one, and both directions against each other. */
function scaleWarnings(read: ReadPage, options: MeasureOptions): PageWarning[] {
  const across = pitchOf(read.rulings, 'across');
  const down = pitchOf(read.rulings, 'down');
  const warnings: PageWarning[] = [];
  if (
    across !== null &&
    down !== null &&
    Math.abs(across / down - 1) > SCALE_TOLERANCE &&
    Math.abs(across / down - 1) < 0.1
  )
    warnings.push(WARNINGS.axesDiffer);
  if (across === null) return warnings;
  if (options.rulingMm !== undefined) {
    if (Math.abs(across / options.rulingMm - 1) > RULING_TOLERANCE)
      warnings.push(rulingWarning(across, options.rulingMm));
  } else if (usualRuling(across, RULING_TOLERANCE) === null) warnings.push(rulingWarning(across, null));
  return warnings;
}
