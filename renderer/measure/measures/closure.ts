import { wilson } from '../../statistics/wilson.ts';
import type { Measure } from './measure.ts';
import { NOTHING, wordsIn } from './measure.ts';

export const closedLoops: Measure = {
  code: 'closed-loops',
  name: 'Closed loops',
  unit: 'count',
  direction: 'none',
  source: 'Paper enclosed by ink (4-connected paper, 8-connected ink), counted; descriptive.',
  how: 'white areas enclosed by the ink of words',
  compute: (page) => {
    const words = wordsIn(page);
    if (words.length === 0) return NOTHING;
    return {
      value: words.reduce((sum, word) => sum + word.loops, 0),
      n: words.length,
      low: null,
      high: null,
      spread: null,
    };
  },
};

export const closure: Measure = {
  code: 'closure',
  name: 'Letters closed that should close',
  unit: '%',
  direction: 'more',
  least: 0,
  source:
    'Definition: closed over expected among a b d g o p q; under 80 % leads to practice (common practice, no source). Interval: Wilson 1927.',
  how: 'letters with a closed loop, by a light stroke too, over those of the text that should close; needs the text',
  compute: (page) => {
    const letters = wordsIn(page)
      .flatMap((word) => word.letters)
      .filter((letter) => letter.closureExpected === true && !letter.excluded);
    const closed = letters.filter((letter) => letter.loops > 0).length;
    if (letters.length === 0) return NOTHING;
    const { low, high } = wilson(closed, letters.length);
    return {
      value: (100 * closed) / letters.length,
      n: letters.length,
      low: 100 * low,
      high: 100 * high,
      spread: null,
    };
  },
};
