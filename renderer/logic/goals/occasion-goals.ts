/**
 * The next step of each writing occasion: its own ladder, its own measure. A signature is told apart and accepted, never
 * read; sums and dates are exact or not; everything else is read.
 */
import type { Goal, OccasionRung } from '../../../db/types/goal.ts';
import type { OccasionCode } from '../../../db/types/occasions.ts';
import type { ClientRecord } from '../../../db/types/record.ts';
import { occasionsOf } from '../record/occasions.ts';
import { occasionsWanted } from '../record/writing-occasions.ts';
import type { Limits } from '../rules/limits.ts';
import { nextStep } from './goal-ladder.ts';
import { successOf } from './signature-check.ts';
import { baselinePercent, type GoalDraft, type LevelNoise, levelsFor, readSamples } from './new-goal.ts';
import type { Told } from '../texts/screens/en/screens-en.ts';

export interface OccasionStep {
  occasion: OccasionCode;
  rung: OccasionRung;
  /** Percent of words to be read; null where nothing is read. */
  percent: number | null;
  /** What counts as reached, as a sentence. */
  success: string;
  because: string;
}

/** The rung after the last one that was met; the one worked on stays. */
function rungNow(
  rungs: readonly OccasionRung[],
  goals: readonly Goal[],
  words: Told['goals'],
): { rung: OccasionRung; because: string } {
  const at = (goal: Goal): number => rungs.findIndex((rung) => rung.output === goal.output);
  const met = Math.max(-1, ...goals.filter((goal) => goal.status === 'met').map(at));
  const active = goals.findLast((goal) => goal.status === 'active' && at(goal) > met);
  if (active) return { rung: rungs[at(active)]!, because: words.stepAgreed };
  const rung = rungs[Math.min(met + 1, rungs.length - 1)]!;
  return {
    rung,
    because: met < 0 ? words.firstStep : words.wasMet(rungs[met]!.output),
  };
}

/** @param mdc smallest change that can be told, percentage points; null = not known */
export function occasionSteps(
  record: ClientRecord,
  ladder: readonly OccasionRung[],
  mdc: number | null,
  limits: Limits,
  words: Told['goals'],
): OccasionStep[] {
  const samples = occasionsOf(record);
  return occasionsWanted(record).flatMap(({ code }): OccasionStep[] => {
    const rungs = ladder.filter((rung) => rung.occasion === code);
    if (rungs.length === 0) return [];
    const goals = record.goals.filter((goal) => goal.occasion === code);
    const now = rungNow(rungs, goals, words);
    if (now.rung.measure !== 'words')
      return [{ occasion: code, ...now, percent: null, success: `${successOf(now.rung.measure, words)}.` }];
    // Its own samples where there are any, else what was read of any text; from the rung that is reached by goals.
    const own = samples.filter((each) => each.sample.task.occasion === code);
    const read = readSamples(own.length > 0 ? own : samples);
    const from = rungs.slice(rungs.indexOf(now.rung));
    const step = nextStep(read, now.rung.code, mdc, limits, own.length > 0 ? from : from.slice(0, 1), words);
    const rung = from.find((each) => each.code === step.rung.code) ?? now.rung;
    return [
      {
        occasion: code,
        rung,
        percent: step.percent,
        success: words.success(step.wordsRight, step.wordsOf, step.percent),
        because: read.length > 0 ? step.because : now.because,
      },
    ];
  });
}

/** A goal as it could be agreed on now for an occasion. */
export function occasionGoal(
  base: GoalDraft,
  step: OccasionStep,
  ladder: readonly OccasionRung[],
  noise: LevelNoise,
  words: Told['goals'],
): GoalDraft {
  const { rung, occasion, percent } = step;
  const rungs = ladder.filter((each) => each.occasion === occasion);
  const above = rungs[rungs.findIndex((each) => each.code === rung.code) + 1];
  const read = rung.measure === 'words';
  return {
    ...base,
    occasion,
    measure: rung.measure,
    output: rung.output,
    paper: rung.paper || base.paper,
    wordsOf: read ? rung.words : null,
    percent: read ? percent : null,
    baseline: read ? base.baseline : '',
    levels: read
      ? levelsFor(baselinePercent(base.baseline), percent, rung.words, base.tries.of, noise, words)
      : ['', '', '', '', ''],
    nextStep: above?.output ?? '',
  };
}
