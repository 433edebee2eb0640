import type { Ink } from '../image/ink.ts';
import type { Layout } from '../lines/page-layout.ts';
import type { ReadPage } from '../measures/measure.ts';
import { median } from '../../statistics/order-statistics.ts';
import { SCALE_TOLERANCE } from '../sheet/sheet.ts';
import type { GrayImage, MeasureOptions, PageWarning } from '../types.ts';
import { doubtWarning, WARNINGS, rulingWarning, sizeWarning } from './warnings.ts';
import { pitchOf, RULING_TOLERANCE, usualRuling } from './ruling-scale.ts';

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
/** Ink paler than this contrast to the paper, %, may be lost in part. */
const FAINT = 22;

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
  const size = median(layout.sizes)!;
  if (size < LEAST_PX) warnings.push(WARNINGS.smallText);
  const sizeMm = size / layout.frame.pxPerMm;
  if (sizeMm < SIZES_MM.least || sizeMm > SIZES_MM.most) warnings.push(sizeWarning(sizeMm));
  if (isBlurred(ink, layout)) warnings.push(WARNINGS.blur);
  if (read.darknessPercent !== null && read.darknessPercent < FAINT) warnings.push(WARNINGS.faint);
  const cut = layout.lines.some((line) =>
    line.blobs.some(({ blob }) => blob.left <= 1 || blob.right >= image.width - 1),
  );
  if (cut) warnings.push(WARNINGS.writingCut);
  return [...warnings, ...scaleWarnings(read, options)];
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
