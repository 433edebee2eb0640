/** What measured texts must have in common, read from the threshold table. */
import { threshold } from '../../../db/types/rule-table/threshold.ts';
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

/** Languages that have bands of their own; others are measured with shipped texts only. */
export const languagesWithBands = ['en', 'es', 'de'] as const;

/** @throws RuleTableError naming a missing row */
export function textBands(thresholds: readonly Threshold[], language: string): TextBands {
  const value = (code: string): number => threshold(thresholds, code);
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
