import type { Measure } from './measure.ts';
import { NOTHING, wordsIn } from './measure.ts';
import { pooledMedian } from './pooled.ts';

export const strokeWidth: Measure = {
  code: 'stroke-width',
  name: 'Width of the pen stroke',
  unit: 'mm',
  direction: 'none',
  source:
    'Definition: width of the upright strokes at half contrast, square to the stroke. Depends on pen and pressure; no cut-off.',
  how: 'median width of the straight upright strokes, interval over words',
  compute: (page, draws) =>
    pooledMedian(
      wordsIn(page).map((word) => word.strokeWidthsMm),
      draws,
    ),
};

export const darkness: Measure = {
  code: 'darkness',
  name: 'Darkness of the ink',
  unit: '%',
  direction: 'none',
  source:
    'Definition: contrast of the ink to the paper. Depends on pen, paper and scanner; only for the same of all three.',
  how: 'mean contrast of the darker half of the ink over the brightness of the paper',
  compute: (page) =>
    page.darknessPercent === null || page.lines.length === 0
      ? NOTHING
      : { value: page.darknessPercent, n: wordsIn(page).length, low: null, high: null, spread: null },
};
