import type { Measure, ReadPage } from './measure.ts';
import { wordsIn } from './measure.ts';
import { pooledMedian } from './pooled.ts';

/**
 * Heights of the small letters by word, mm. Where letters touch, large words show more of their tops than
 * small ones: without the text, heights are scaled by how much the mean size of a letter differs from that of a top read.
 */
export function smallHeights(page: ReadPage): number[][] {
  const words = wordsIn(page);
  const heights = words.map((word) => word.xHeightsMm);
  if (words.some((word) => word.text !== null)) return heights;
  let [letters, ofLetters, tops, ofHeads] = [0, 0, 0, 0];
  for (const { sizeMm, letterCount, xHeightsMm } of words) {
    letters += letterCount;
    ofLetters += letterCount * Math.log(sizeMm);
    tops += xHeightsMm.length;
    ofHeads += xHeightsMm.length * Math.log(sizeMm);
  }
  if (letters === 0 || tops === 0) return heights;
  const factor = Math.exp(ofLetters / letters - ofHeads / tops);
  return heights.map((list) => list.map((height) => height * factor));
}

export const xHeight: Measure = {
  code: 'x-height',
  name: 'Height of small letters',
  unit: 'mm',
  direction: 'none',
  source: 'Definition: common practice (median of a c e m n o r s u v w x z, baseline to top). No cut-off.',
  how: 'median height of the small letters above the baseline, stroke included, each word by its letters, interval over words',
  compute: (page, draws) => pooledMedian(smallHeights(page), draws),
};
