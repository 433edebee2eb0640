import type { GoalMeasure } from '../../../db/types/goal.ts';
import { pairsShown, rightNeeded } from './signature-check.ts';

/** What counts as reached where no reader counts words, in words that fit into “so that …”. */
export const successWords: Readonly<Record<Exclude<GoalMeasure, 'words'>, string>> = {
  exact: 'every word and digit is exact',
  'told-apart': `a second person tells at least ${rightNeeded} of ${pairsShown} pairs of signatures right`,
  accepted: 'it is accepted in use; where and when are noted',
};
