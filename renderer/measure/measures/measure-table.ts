import { seededDraws } from './bootstrap.ts';
import type { MeasureValue } from '../types.ts';
import { baselineAngle, baselineRms, rulingDistance } from './baseline-measures.ts';
import { closedLoops, closure } from './closure.ts';
import { firstLastFive } from './first-last-five.ts';
import { gapRatio, gapSeparation, letterGap, wordGap, wordGapCv } from './gap-measures.ts';
import { lineDecrement, lineDecrementLetter } from './line-decrement.ts';
import { marginDrift } from './margin-drift.ts';
import type { Measure, ReadPage } from './measure.ts';
import { methodOf, tidy } from './measure.ts';
import { pageDecrement } from './page-decrement.ts';
import { ascenderRatio, descenderRatio } from './reach.ts';
import { slant, slantSd } from './slant-measures.ts';
import { darkness, strokeWidth } from './stroke.ts';
import { xHeight } from './x-height.ts';
import { xHeightCv } from './x-height-cv.ts';

/** All measures of a page, in the order of the report. A new one is a file here and a row in this list. */
export const MEASURES: readonly Measure[] = [
  xHeight,
  xHeightCv,
  ascenderRatio,
  descenderRatio,
  lineDecrement,
  lineDecrementLetter,
  firstLastFive,
  pageDecrement,
  baselineAngle,
  baselineRms,
  rulingDistance,
  wordGap,
  wordGapCv,
  letterGap,
  gapRatio,
  gapSeparation,
  closedLoops,
  closure,
  slant,
  slantSd,
  strokeWidth,
  darkness,
  marginDrift,
];

/** Every measure of a page as read. The same page and seed give the same values and intervals. */
export function measuresOf(page: ReadPage, seed: number): MeasureValue[] {
  const draws = seededDraws(seed);
  return MEASURES.map((measure) => {
    const reading = measure.compute(page, draws);
    return {
      code: measure.code,
      value: tidy(reading.value),
      unit: measure.unit,
      n: reading.n,
      low: tidy(reading.low),
      high: tidy(reading.high),
      spread: tidy(reading.spread),
      method: methodOf(measure),
    };
  });
}
