import type { Measure } from './measure.ts';
import { wordsIn } from './measure.ts';
import { variation } from './pooled.ts';

export const xHeightCv: Measure = {
  code: 'x-height-cv',
  name: 'Unevenness of letter height',
  unit: '%',
  direction: 'less',
  source: 'Definition: standard deviation over mean, at least 15 letters (common practice). No cut-off.',
  how: 'standard deviation over mean of the small letters, interval over words',
  compute: (page, draws) =>
    variation(
      wordsIn(page).map((word) => word.xHeightsMm),
      15,
      draws,
    ),
};
