import { markKey, marksOf } from './corrections/letter-marks.ts';
import type { Marks } from './corrections/letter-marks.ts';
import { withMoved } from './corrections/moved-words.ts';
import { holes } from './image/holes.ts';
import type { Hole } from './image/holes.ts';
import type { Ink } from './image/ink.ts';
import { headKinds } from './letters/top-kinds.ts';
import type { LetterTop } from './lines/letter-tops.ts';
import { resized, smallTops } from './lines/small-letters.ts';
import { aligned, levelled } from './lines/shared-size.ts';
import { lightlyClosed } from './measures/light-closing.ts';
import { shapeKinds } from './letters/shapes.ts';
import type { Layout } from './lines/page-layout.ts';
import { median } from '../statistics/order-statistics.ts';
import { measuresOf } from './measures/measure-table.ts';
import { readLine } from './letters/line-letters.ts';
import { withoutMisread } from './letters/misread-letters.ts';
import { fitText } from './letters/text-fit.ts';
import { handWidths } from './letters/hand-widths.ts';
import type { GrayImage, LineResult, PageInfo, PageResult, PageWarning, RulingResult } from './types.ts';
import type { MeasureOptions } from './measure-options.ts';
import { METHOD_VERSION } from './version.ts';
import { directionOf, isSideways } from './trust/direction.ts';
import { isBlurred, pageWarnings } from './trust/page-warnings.ts';
import { pitchOf } from './trust/ruling-scale.ts';
import { slipsWarning, WARNINGS } from './trust/warnings.ts';
import { rulingsOf, loopsOf } from './print-and-loops.ts';

/** White areas of fewer pixels are no loops: pencil on rough paper leaves such holes inside its strokes. */
const LEAST_LOOP_PX = 5;
/** Small letters under this many pixels cannot be told from specks. */
const LEGIBLE_PX = 5;
/** Seed of the intervals where none is given. */
const SEED = 1;

/**
 * The result as it is stored and shown.
 * @param contrast of the ink to its paper as it was given, share of the paper's brightness
 */
export function resultOf(
  image: GrayImage,
  page: PageInfo,
  ink: Ink,
  given: Layout,
  options: MeasureOptions,
  before: PageWarning[],
  contrast: number | null,
): PageResult {
  const byComponent = new Map<number, Hole[]>();
  for (const hole of holes(ink.runs, ink.components, LEAST_LOOP_PX)) {
    const list = byComponent.get(hole.component) ?? [];
    list.push(hole);
    byComponent.set(hole.component, list);
  }
  const warnings = [...before];
  const kinds = shapeKinds(given, byComponent);
  let layout = aligned(levelled(given, kinds));
  const rulings = rulingsOf(ink, layout);
  if (layout.busy) return untrusted(page, [...warnings, WARNINGS.busy], rulings);
  if (layout.lines.length > 0 && median(layout.sizes)! < LEGIBLE_PX)
    return untrusted(page, [...warnings, WARNINGS.unreadable], rulings);
  const lying = options.upright ? null : lieOf(layout, byComponent);
  // What is smeared looks as if it lay on its side.
  const reason = lying && isBlurred(ink, layout) ? WARNINGS.blur : lying;
  if (reason) return untrusted(page, [...warnings, reason], rulings);
  let texts: (string | null)[][] | null = null;
  let textFits: boolean | null = null;
  if (options.text !== undefined && options.text.trim() !== '' && layout.lines.length > 0) {
    const fit = fitText(layout, options.text);
    if (fit.turned) {
      const reason = fit.turned === 'mirrored' ? WARNINGS.mirrored : WARNINGS.upsideDown;
      return untrusted(page, [...warnings, reason], rulings);
    }
    if (fit.fits) {
      texts = fit.texts;
      layout = { ...layout, words: fit.words };
      const foreign = fit.texts.flat().filter((word) => word === null).length;
      if (fit.leftOut.length + foreign > 0) warnings.push(slipsWarning(fit.leftOut, foreign));
    } else warnings.push(WARNINGS.textUnfit);
    textFits = fit.fits;
  }
  ({ layout, texts } = withMoved(layout, texts));
  layout = resized(layout);
  const marks = marksOf(layout, options.corrections ?? []);
  texts = withSetTexts(layout, texts, marks);
  const widths = texts ? handWidths(layout, texts, byComponent) : undefined;
  const alike = {
    letters: kinds,
    tops: texts ? new Map<LetterTop, number>() : headKinds(layout),
    small: smallTops(layout),
  };
  const read = sizesAsRead(
    withoutMisread(
      layout.lines.map((_, i) => readLine(layout, ink, i, texts?.[i] ?? null, byComponent, marks, alike, widths)),
    ),
  );
  const lines = texts ? lightlyClosed(read, layout, image, ink, LEAST_LOOP_PX) : read;
  const result = {
    version: METHOD_VERSION,
    page: { ...page, rulingMm: pitchOf(rulings, 'across') },
    lines,
    warnings,
    textFits,
    wordDoubt: textFits
      ? 0
      : layout.expectedWrong /
        Math.max(
          1,
          lines.reduce((n, line) => n + line.words.length, 0),
        ),
    darknessPercent: contrast === null ? null : 100 * contrast,
    rulings,
    loops: loopsOf(layout, byComponent),
  };
  warnings.push(...pageWarnings(image, result, ink, layout, options));
  return { ...result, measures: measuresOf(result, options.seed ?? SEED) };
}

/**
 * Sizes along the lines, made to agree with the median of the letters read: the course of a line follows the commonest
 * height, which in an uneven hand is not the median one.
 */
function sizesAsRead(lines: LineResult[]): LineResult[] {
  const ratios = lines.flatMap((line) => line.words.flatMap((w) => w.xHeightsMm.map((height) => height / w.sizeMm)));
  const factor = median(ratios) ?? 1;
  return lines.map((line) => ({
    ...line,
    words: line.words.map((word) => ({ ...word, sizeMm: word.sizeMm * factor })),
  }));
}

/** Texts of words, with those set by hand in their place. */
function withSetTexts(layout: Layout, texts: (string | null)[][] | null, marks: Marks): (string | null)[][] | null {
  if (marks.texts.size === 0) return texts;
  return layout.words.map((words, i) =>
    words.map((_, k) => {
      const set = marks.texts.get(markKey(i, k));
      return set === undefined ? (texts?.[i]?.[k] ?? null) : set === '' ? null : set;
    }),
  );
}

/** A page that must not be measured: no lines, values unknown, and the reason. */
export function untrusted(page: PageInfo, warnings: PageWarning[], rulings: RulingResult[] = []): PageResult {
  const read = {
    version: METHOD_VERSION,
    page,
    lines: [],
    warnings,
    textFits: null,
    darknessPercent: null,
    rulings,
    loops: [],
  };
  return { ...read, measures: measuresOf(read, SEED) };
}

/** Why the page does not lie upright; null when it seems to. */
function lieOf(layout: Layout, byComponent: ReadonlyMap<number, readonly Hole[]>): PageWarning | null {
  if (isSideways(layout)) return WARNINGS.sideways;
  const direction = directionOf(layout, byComponent);
  if (direction === 'upside-down') return WARNINGS.upsideDown;
  return direction === 'mirrored' ? WARNINGS.mirrored : null;
}
