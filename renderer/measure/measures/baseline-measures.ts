import type { LineResult } from '../types.ts';
import type { Measure, ReadPage } from './measure.ts';
import { pooledMedian } from './pooled.ts';

/** One value for each line that has it. */
function byLine(page: ReadPage, pick: (line: LineResult) => number | null): number[][] {
  return page.lines.map((line) => {
    const value = pick(line);
    return value === null ? [] : [value];
  });
}

export const baselineAngle: Measure = {
  code: 'baseline-angle',
  name: 'Angle of the lines',
  unit: 'deg',
  direction: 'none',
  source:
    'Definition: fit through the bottoms of the letters, + rising. Over 2 degrees leads to practice (common practice, no source).',
  how: 'median over lines of the least-squares angle of the bottoms that stand on the line, interval over lines',
  compute: (page, draws) =>
    pooledMedian(
      byLine(page, (line) => line.baselineAngleDeg),
      draws,
    ),
};

export const baselineRms: Measure = {
  code: 'baseline-rms',
  name: 'Waviness of the lines',
  unit: 'mm',
  direction: 'less',
  least: 0,
  source:
    'Definition: root mean square distance of the bottoms from the straight line. Over 0.3 x-heights leads to practice (common practice, no source).',
  how: 'median over lines, interval over lines',
  compute: (page, draws) =>
    pooledMedian(
      byLine(page, (line) => line.baselineRmsMm),
      draws,
    ),
};

export const rulingDistance: Measure = {
  code: 'ruling-distance',
  name: 'Distance to the printed line',
  unit: 'mm',
  direction: 'less',
  source:
    'Definition: mean signed distance of the bottoms from the printed line, + above it (common practice). No cut-off.',
  how: 'median over lines of the mean distance, interval over lines; ruled paper only',
  compute: (page, draws) =>
    pooledMedian(
      byLine(page, (line) => line.rulingOffsetMm),
      draws,
    ),
};
