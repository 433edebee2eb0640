import type { Measure } from './measure.ts';
import { wordsIn } from './measure.ts';
import { logVariation } from './pooled.ts';

export const xHeightCv: Measure = {
  code: 'x-height-cv',
  name: 'Unevenness of letter height',
  unit: '%',
  direction: 'less',
  least: 0,
  source: 'Definition: standard deviation over mean, at least 15 letters (common practice). No cut-off.',
  how: 'standard deviation over mean of all small letters, also the very low and high ones, from the spread of ln(height), interval over words',
  compute: (page, draws) =>
    logVariation(
      wordsIn(page).map((word) => word.unevenMm ?? word.xHeightsMm),
      15,
      draws,
    ),
};
