/** What measured texts must have in common, read from the threshold table. */
import type { Threshold } from '../../../db/types/rules.ts';

interface TextBand {
  middle: number;
  spread: number;
}

export interface TextBands {
  letters: TextBand;
  ascenders: TextBand;
  descenders: TextBand;
  closing: TextBand;
  /** Different letters at least. */
  leastDifferent: number;
  /** A letter of the goal stands at least so often, in at least so many words. */
  goalTimes: number;
  goalWords: number;
}

/** @throws Error naming a missing row */
export function textBands(thresholds: readonly Threshold[], language: string): TextBands {
  const value = (code: string): number => {
    const row = thresholds.find((each) => each.code === code);
    if (!row) throw new Error(`The threshold table has no row "${code}".`);
    return row.value;
  };
  const band = (name: string): TextBand => ({
    middle: value(`text-${name}-${language}`),
    spread: value(`text-${name}-spread`),
  });
  return {
    letters: band('letters'),
    ascenders: band('ascenders'),
    descenders: band('descenders'),
    closing: band('closing'),
    leastDifferent: value('text-different-letters'),
    goalTimes: value('text-goal-letter-times'),
    goalWords: value('text-goal-letter-words'),
  };
}
