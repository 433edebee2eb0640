import type { Measure } from './measure.ts';
import { NOTHING, wordsIn } from './measure.ts';
import { pooledQuantile } from './pooled.ts';

/** Lower quartile: joined letters draw many a stem twice, which only ever makes it wider. */
const QUARTILE = 0.25;

export const strokeWidth: Measure = {
  code: 'stroke-width',
  name: 'Width of the pen stroke',
  unit: 'mm',
  direction: 'none',
  source:
    'Definition: width of the upright strokes at half contrast, square to the stroke. Depends on pen and pressure; no cut-off.',
  how: 'lower quartile of the widths of the straight upright strokes, interval over words',
  compute: (page, draws) =>
    pooledQuantile(
      wordsIn(page).map((word) => word.strokeWidthsMm),
      QUARTILE,
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
