import { goalLadder } from '../db/rules/table/ladder-thresholds.ts';
import { rulesCurrent } from '../db/rules/index.ts';
import { limitsOf } from '../renderer/logic/rules/limits.ts';

/** The limits as they are shipped. */
export const limits = limitsOf(rulesCurrent());

/** The ladder of goals as it is shipped. */
export const ladder = goalLadder(rulesCurrent().thresholds);
