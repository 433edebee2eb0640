import { median } from '../../statistics/order-statistics.ts';
import type { GoalRung } from '../../../db/types/goal.ts';
import type { Limits } from '../rules/limits.ts';
import type { Told } from '../texts/screens/en/screens-en.ts';

export interface ReadSample {
  /** Percent of words read, 0 to 100. */
  percent: number;
  words: number;
}

export interface NextStep {
  rung: GoalRung;
  /** Percent of words to be read at the expected level. */
  percent: number;
  /** The same in words of about this many. */
  wordsRight: number;
  wordsOf: number;
  /** Whether the step is larger than the minimal detectable change; null when that is not known or not in percent. */
  largerThanMdc: boolean | null;
  because: string;
}

/**
 * Proposes the next reachable step above what the last samples show. Where the present rung is not yet climbed the
 * step is a higher percent on it, larger than the minimal detectable change where known; else it is the next rung.
 * @param samples samples that were read, oldest first
 * @param current code of the rung worked on, or what the goal in force says is written; null, or where no rung fits, it
 *   is taken from the length of the last samples
 * @param mdc minimal detectable change in percentage points, or null
 * @param rungs the ladder in use, lowest first (`rules.goalLadder`)
 * @param limits when a rung counts as climbed, and how far a step goes (`limitsOf`)
 */
export function nextStep(
  samples: readonly ReadSample[],
  current: string | null,
  mdc: number | null,
  { goalClimbedPercent, goalFirstStep, goalSamples }: Limits,
  rungs: readonly GoalRung[],
  words: Told['goals'],
): NextStep {
  const last = samples.slice(-goalSamples);
  if (last.length === 0) {
    return step(rungs[0]!, goalClimbedPercent, null, words.firstRung);
  }
  const percents = last.map((s) => s.percent);
  // A step stands above what was shown: above the usual sample and above the latest one.
  const level = Math.max(median(percents)!, percents.at(-1)!);
  const length = median(last.map((s) => s.words))!;
  const known = current === null ? -1 : rungIndex(rungs, current);
  const index = known < 0 ? longestWithin(rungs, length) : known;
  const here = rungs[index]!;
  const [low, high] = [Math.round(Math.min(...percents)), Math.round(Math.max(...percents))];
  const seen = words.seen(last.length, low, high);
  const above = rungs[Math.min(index + 1, rungs.length - 1)]!;
  if (level >= goalClimbedPercent) {
    return step(above, goalClimbedPercent, null, words.readyForNext(seen, here.output));
  }
  const wanted = level + Math.max(goalFirstStep * (goalClimbedPercent - level), mdc === null ? 0 : Math.floor(mdc) + 1);
  const target = Math.ceil(wanted);
  if (target > 100) {
    const why = words.passes100(seen, Math.round(mdc ?? 0));
    return step(above, goalClimbedPercent, null, why);
  }
  if (target - level < 100 / here.words && goalClimbedPercent - level < 100 / here.words) {
    return step(above, goalClimbedPercent, null, words.lessThanWord(seen, here.output));
  }
  const fits = mdc === null ? null : target - level > mdc;
  return step(here, target, fits, words.nextStepIs(seen, target, mdc === null ? null : Math.round(mdc)));
}

/**
 * Staged targets on the way to a goal, leaving out steps that measurement could not tell.
 * @param baseline,goal percent of words
 * @param wordsOf words of the goal: a step is at least one of them; null = not known
 */
export function stagedTargets(
  baseline: number,
  goal: number,
  mdc: number | null,
  { goalFirstStep, goalSecondStep }: Pick<Limits, 'goalFirstStep' | 'goalSecondStep'>,
  wordsOf: number | null = null,
): number[] {
  const least = wordsOf ? 100 / wordsOf : 0;
  const targets: number[] = [];
  let from = baseline;
  for (const share of [goalFirstStep, goalSecondStep, 1]) {
    const target = Math.round(baseline + share * (goal - baseline));
    if (target - from > (mdc ?? 0) && target - from >= least) {
      targets.push(target);
      from = target;
    }
  }
  return targets;
}

function step(rung: GoalRung, percent: number, largerThanMdc: boolean | null, because: string): NextStep {
  const wordsRight = wordsOfPercent(percent, rung.words);
  return { rung, percent, wordsRight, wordsOf: rung.words, largerThanMdc, because };
}

/** The least whole number of words that is at least this percent of them. */
export const wordsOfPercent = (percent: number, of: number): number =>
  Math.min(of, Math.ceil((percent * of) / 100 - 1e-9));

/** The rung above what a goal says is written, as the step to talk about next; '' at the top or beside the ladder. */
export function rungAbove(rungs: readonly GoalRung[], output: string): string {
  const at = rungIndex(rungs, output);
  return (at < 0 ? undefined : rungs[at + 1]?.output) ?? '';
}

function longestWithin(rungs: readonly GoalRung[], words: number): number {
  let best = 0;
  // Only the first rungs are told apart by length; later ones differ in use, and the therapist chooses them.
  for (const [i, rung] of rungs.entries()) {
    if (rung.code === 'two-lines-no-pause') break;
    if (rung.words <= words && rung.words >= rungs[best]!.words) best = i;
  }
  return best;
}

/** Place of a rung by its code, or by a goal's own words that begin like its output; -1 where none fits. */
function rungIndex(rungs: readonly GoalRung[], current: string): number {
  const said = current.trim().toLowerCase();
  return rungs.findIndex(
    ({ code, output }) => said !== '' && (code === said || output.startsWith(said) || said.startsWith(output)),
  );
}
