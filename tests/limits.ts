import { rulesCurrent } from '../db/rules/index.ts';
import { limitsOf } from '../renderer/progress/limits.ts';

/** The limits as they are shipped. */
export const limits = limitsOf(rulesCurrent());
