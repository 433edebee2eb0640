import { threshold, thresholdsOf } from '../../../db/types/rule-table/threshold.ts';
import type { RulesInUse } from '../../../db/types/rules-in-use.ts';
import { changeLimits, type ChangeLimits, type RepeatPair } from '../../change/index.ts';

/** Numbers that progress, read-back and goals judge by: rows of the rule table's thresholds, with their sources. */
export interface Limits {
  /** Numbers of the model of change. */
  change: ChangeLimits;
  /** Repeat pairs of the whole clinic; null = only this client is known, its own are used. */
  repeatPairs: readonly RepeatPair[] | null;
  /** Two baseline samples within this many days are a repeat pair. */
  repeatDays: number;
  /** Clock time and time since the dose may differ by this much, minutes. */
  sameTimeMinutes: number;
  /** From this percent of words on, two readers agree. */
  readersAgreePercent: number;
  /** Line scores further apart than this ask for a third reader, percentage points. */
  thirdReaderPoints: number;
  /** Who met a text within this many days still knows it. */
  textForgottenDays: number;
  /** How much larger than written every line is shown to a reader; 1 = true size. */
  readEnlargement: number;
  /** A confused letter is listed from this many times written. */
  exposuresLeast: number;
  /** A rung is climbed from this percent of words read. */
  goalClimbedPercent: number;
  /** Shares of the gap that the first and the second step close, 0 to 1. */
  goalFirstStep: number;
  goalSecondStep: number;
  goalWeeks: number;
  /** How many of the last samples a step is judged by. */
  goalSamples: number;
  /** From this many percentage points less, the family page speaks of a harder day. */
  harderDayPoints: number;
  /** From this percent of equal words, two sentences of judgement count as the same. */
  noteAgainPercent: number;
  /** From this many points more of 10, pain that rises is a flag. */
  painRiseFlag: number;
}

const codes: Readonly<Record<Exclude<keyof Limits, 'change' | 'repeatPairs'>, string>> = {
  repeatDays: 'repeat-days',
  sameTimeMinutes: 'same-time-minutes',
  readersAgreePercent: 'readers-agree',
  thirdReaderPoints: 'third-reader-points',
  textForgottenDays: 'text-forgotten-days',
  readEnlargement: 'read-enlargement',
  exposuresLeast: 'exposures-least',
  goalClimbedPercent: 'goal-climbed',
  goalFirstStep: 'goal-first-step',
  goalSecondStep: 'goal-second-step',
  goalWeeks: 'goal-weeks',
  goalSamples: 'goal-samples',
  harderDayPoints: 'harder-day-points',
  noteAgainPercent: 'note-again-share',
  painRiseFlag: 'pain-rise-flag',
};

/** Reads the limits from the rules in use. @throws RuleTableError naming a threshold that the table lacks */
export function limitsOf(rules: Pick<RulesInUse, 'thresholds' | 'repeatPairs'>): Limits {
  const values = thresholdsOf(rules.thresholds);
  const entries = Object.entries(codes).map(([name, code]) => [name, threshold(values, code)] as const);
  return {
    ...(Object.fromEntries(entries) as unknown as Limits),
    change: changeLimits(rules.thresholds),
    repeatPairs: rules.repeatPairs ?? null,
  };
}
