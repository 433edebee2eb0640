import { median } from '../../../renderer/statistics/order-statistics.ts';
import { OUTLINE_HANDS } from '../../../build/letters/outline-fonts.ts';
import { PEN_HANDS } from '../../../build/letters/pen-fonts.ts';
import type { PageResult } from '../../../renderer/measure/types.ts';
import type { LineTruth, MadePage } from './types.ts';

/** One comparison of the engine with the truth. */
export interface Judgement {
  quantity: string;
  /** How far off, in `unit`; infinite when nothing was measured. */
  error: number;
  unit: string;
  /** What it may be at most; null is reported only. */
  limit: number | null;
}

/** Whether letters of the page's hand are connected. */
function isJoined(page: MadePage): boolean {
  const { font } = page.spec.writing;
  return font in OUTLINE_HANDS
    ? OUTLINE_HANDS[font as keyof typeof OUTLINE_HANDS]
    : PEN_HANDS[font as keyof typeof PEN_HANDS];
}

const share = (measured: number | null | undefined, truth: number): number =>
  typeof measured === 'number' ? (100 * Math.abs(measured - truth)) / Math.abs(truth) : Infinity;

function percentile(values: readonly number[], part: number): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.ceil(part * sorted.length) - 1)] ?? Infinity;
}

const wordCount = (lines: readonly { words: readonly unknown[] }[]): number =>
  lines.reduce((sum, line) => sum + line.words.length, 0);

/** Errors of the angles of lines that were told apart rightly, degrees. */
function angleErrors(page: MadePage, result: PageResult): number[] {
  const turn = page.truth.turnIsVisible ? 0 : page.truth.rotationDeg;
  return page.truth.lines.map((line, index) => {
    const angle = result.lines[index]?.baselineAngleDeg;
    return typeof angle === 'number' ? Math.abs(angle - line.baselineAngleDeg - turn) : Infinity;
  });
}

/** Percent errors of the gaps of lines whose words were told apart rightly. */
function gapErrors(truth: readonly LineTruth[], result: PageResult): number[] {
  return truth.flatMap((line, index) => {
    const words = result.lines[index]?.words;
    if (words?.length !== line.words.length) return line.words.slice(1).map(() => Infinity);
    return line.words.flatMap((word, at) =>
      word.gapBeforeMm === null ? [] : [share(words[at]?.gapBeforeMm, word.gapBeforeMm)],
    );
  });
}

/** Largest misplacement of a word box's side on a page that lies straight, mm. */
function boxError(page: MadePage, result: PageResult): number | null {
  if (page.spec.picture.rotationDeg !== 0 || page.spec.picture.tilt) return null;
  const errors = page.truth.lines.flatMap((line, index) => {
    const words = result.lines[index]?.words;
    if (words?.length !== line.words.length) return [];
    return line.words.flatMap((word, at) => {
      const box = words[at]?.box;
      if (!box) return [];
      return [
        Math.abs(box.xMm - word.box.xMm),
        Math.abs(box.yMm - word.box.yMm),
        Math.abs(box.xMm + box.widthMm - word.box.xMm - word.box.widthMm),
        Math.abs(box.yMm + box.heightMm - word.box.yMm - word.box.heightMm),
      ];
    });
  });
  return errors.length ? Math.max(...errors) : null;
}

/** Compares a measured page with its truth; limits are those of the project's table of what to reach. */
export function judgePage(page: MadePage, result: PageResult): Judgement[] {
  const { truth, spec } = page;
  const value = (code: string): number | null => result.measures.find((m) => m.code === code)?.value ?? null;
  const rows: Judgement[] = [];
  const add = (quantity: string, error: number, unit: string, limit: number | null): void => {
    rows.push({ quantity, error, unit, limit });
  };
  const joined = isJoined(page);
  const photo = spec.picture.tilt !== null;

  add('lines', Math.abs(result.lines.length - truth.lines.length), '', 0);
  const words = wordCount(truth.lines);
  add('words', Math.abs(wordCount(result.lines) - words), '', spec.ruling.kind === 'plain' ? 0 : 0.01 * words);
  // The middle over letters and the middle over words part where the size changes; either is a fair page median.
  const ofWords = median(truth.lines.flatMap((line) => line.words.map((word) => word.xHeightMm)))!;
  const size = value('x-height');
  const sizeError = Math.min(share(size, truth.xHeightMm), share(size, ofWords));
  add('x-height', sizeError, '%', joined || truth.xHeightPx < 20 ? 3 : 1.5);
  const angles = angleErrors(page, result);
  // Of a waving line every robust fit has a slope of its own; its angle is reported only.
  add('angle, median', median(angles)!, 'deg', spec.writing.waveMm > 0 ? null : photo ? 0.2 : 0.05);
  add('angle, worst', Math.max(...angles), 'deg', null);
  if (truth.turnIsVisible)
    add('turn', Math.abs(result.page.rotationDeg - truth.rotationDeg), 'deg', photo ? 0.2 : 0.05);
  const gaps = gapErrors(truth.lines, result);
  add('word gap, median', median(gaps)!, '%', 1);
  add('word gap, p90', percentile(gaps, 0.9), '%', 3);
  if (truth.xHeightPx >= 15) {
    const decrement = value('line-decrement');
    // Openings take the tops of the letters away, so their true height is not the drawn one.
    const topsKept = spec.writing.openShare <= 0.5;
    if (truth.lineDecrement === 0)
      add(
        'no shrinking',
        Math.abs(decrement ?? Infinity),
        'ln/word',
        topsKept ? 0.0005 + truth.apparentDecrement : null,
      );
    else add('shrinking', share(decrement, truth.lineDecrement), '%', 4);
  }
  const perLine = value('page-decrement');
  if (truth.pageDecrementPercent !== 0) add('page shrinking', share(perLine, truth.pageDecrementPercent), '%', null);
  else add('no page shrinking', Math.abs(perLine ?? Infinity), '%/line', null);
  const loops = value('closed-loops');
  const { low, high } = truth.closedLoops;
  add(
    'loops',
    loops === null ? Infinity : Math.max(low - loops, loops - high, 0),
    '',
    truth.xHeightPx >= 25 && !joined ? 0 : null,
  );
  if (truth.strokeWidthMm !== null)
    add('stroke width', share(value('stroke-width'), truth.strokeWidthMm), '%', truth.strokeWidthMm >= 0.4 ? 8 : null);
  if (spec.writing.waveMm > 0) {
    const ratios = truth.lines.map((line, i) => share(result.lines[i]?.baselineRmsMm, line.baselineRmsMm));
    add('waviness, median', median(ratios)!, '%', 10);
  }
  if (truth.slantDeg !== null) add('slant', Math.abs((value('slant') ?? Infinity) - truth.slantDeg), 'deg', null);
  if (truth.letterGapXh !== null)
    add('letter gap', Math.abs((value('letter-gap') ?? Infinity) - truth.letterGapXh), 'xh', null);
  const box = boxError(page, result);
  if (box !== null) add('word box, worst side', box, 'mm', null);
  return rows;
}

/** Whether a comparison keeps its limit. */
export const isMissed = (row: Judgement): boolean => row.limit !== null && !(row.error <= row.limit + 1e-12);
