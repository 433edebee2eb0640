import { interval, Sorted } from './bootstrap.ts';
import { mean, median } from '../../statistics/order-statistics.ts';
import type { LineResult } from '../types.ts';
import { evenedHeights, letterEffects } from './letter-effect.ts';
import type { Measure } from './measure.ts';
import { NOTHING, wordsOfLine } from './measure.ts';

/** So many letters at each end of a line are compared, as in the published task. */
const END = 5;

export const firstLastFive: Measure = {
  code: 'first-last-five',
  name: 'Loss of size from the first to the last five letters',
  unit: '%',
  direction: 'less',
  source:
    'Mean of the first five against the last five heights; over 10 % in a repeated-letter task: Zham et al. 2019, Front Neurol 10:403. In sentences letters differ; no cut-off there.',
  how: 'mean height of the first five small letters of a line against the last five, median over lines of ten and more, interval over lines',
  compute: (page, draws) => {
    const effects = letterEffects(page);
    const losses = page.lines
      .map((line) => heightsOf(line, effects))
      .filter((heights) => heights.length >= 2 * END)
      .map((heights) => 100 * (1 - mean(heights.slice(-END))! / mean(heights.slice(0, END))!));
    if (losses.length === 0) return NOTHING;
    const sorted = Sorted.of(losses.map((loss) => [loss]));
    return {
      value: median(losses),
      n: losses.length,
      ...interval(losses.length, (times) => sorted.median(times), draws),
      spread: null,
    };
  },
};

/**
 * Heights of the small letters of a line in order; where the text tells which letter it is, what that letter is taller
 * than others is taken off. Not by looks: a row of one letter that shrinks would be split into kinds by its size.
 */
function heightsOf(line: LineResult, effects: ReadonlyMap<string, number>): number[] {
  return wordsOfLine(line).flatMap((word) =>
    word.text === null ? word.xHeightsMm : evenedHeights(word, effects).map(Math.exp),
  );
}
