import { interval, Sorted } from './bootstrap.ts';
import { robustSd } from '../../statistics/order-statistics.ts';
import type { Measure } from './measure.ts';
import { NOTHING, wordsIn } from './measure.ts';
import { pooledMedian } from './pooled.ts';

/** Fewer strokes than this say nothing about their spread. */
const LEAST = 8;
/** Standard deviation of a normal distribution over its median absolute deviation. */
const NORMAL = 1.4826;

export const slant: Measure = {
  code: 'slant',
  name: 'Slant',
  unit: 'deg',
  direction: 'none',
  source:
    'Definition: upright strokes at least 0.7 x-heights long against the normal of the baseline, + leans right (common practice). No cut-off.',
  how: 'median slant of the straight upright strokes, interval over words',
  compute: (page, draws) =>
    pooledMedian(
      wordsIn(page).map((word) => word.slantsDeg),
      draws,
    ),
};

export const slantSd: Measure = {
  code: 'slant-sd',
  name: 'Unevenness of slant',
  unit: 'deg',
  direction: 'less',
  least: 0,
  source: 'Definition: spread of the slants of upright strokes (common practice). No cut-off.',
  how: 'robust standard deviation (1.4826 MAD) of the slants of the strokes, interval over words',
  compute: (page, draws) => {
    const clusters = wordsIn(page)
      .map((word) => word.slantsDeg)
      .filter((list) => list.length > 0);
    const n = clusters.reduce((sum, list) => sum + list.length, 0);
    if (n < LEAST) return { ...NOTHING, n };
    const sorted = Sorted.of(clusters);
    const spread = (times: Int32Array): number | null => {
      const deviation = sorted.deviation(times);
      return deviation === null ? null : NORMAL * deviation;
    };
    return {
      value: robustSd(clusters.flat()),
      n,
      ...interval(clusters.length, spread, draws),
      spread: null,
    };
  },
};
