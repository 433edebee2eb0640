import type { Measure } from './measure.ts';
import { wordsIn } from './measure.ts';
import { pooledMedian } from './pooled.ts';

export const ascenderRatio: Measure = {
  code: 'ascender-ratio',
  name: 'Reach of tall letters',
  unit: 'xh',
  direction: 'none',
  source: 'Definition: b d h k l over x-height; model sheets have about 2 (common practice, no source).',
  how: 'median height of tall letters over the size of the line there, interval over words',
  compute: (page, draws) =>
    pooledMedian(
      wordsIn(page).map((word) => word.ascendersMm.map((height) => height / word.sizeMm)),
      draws,
    ),
};

export const descenderRatio: Measure = {
  code: 'descender-ratio',
  name: 'Reach of hanging letters',
  unit: 'xh',
  direction: 'none',
  source: 'Definition: g j p q y below the baseline over x-height; about 1 (common practice, no source).',
  how: 'median depth of hanging letters over the size of the line there, interval over words',
  compute: (page, draws) =>
    pooledMedian(
      wordsIn(page).map((word) => word.descendersMm.map((depth) => depth / word.sizeMm)),
      draws,
    ),
};
