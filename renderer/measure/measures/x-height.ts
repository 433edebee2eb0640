import type { Measure, ReadPage } from './measure.ts';
import { wordsIn } from './measure.ts';
import { pooledMedian } from './pooled.ts';

/** Heights of the small letters by word, mm. */
export function smallHeights(page: ReadPage): number[][] {
  return wordsIn(page).map((word) => word.xHeightsMm);
}

export const xHeight: Measure = {
  code: 'x-height',
  name: 'Height of small letters',
  unit: 'mm',
  direction: 'none',
  source: 'Definition: common practice (median of a c e m n o r s u v w x z, baseline to top). No cut-off.',
  how: 'median height of the small letters above the baseline, stroke included, interval over words',
  compute: (page, draws) => pooledMedian(smallHeights(page), draws),
};
