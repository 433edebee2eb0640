import { median } from 'simple-statistics';
import type { Limits } from '../progress/limits.ts';

/** One rung: a piece of writing that matters by itself, a reachable step above the one before. */
export interface Rung {
  code: string;
  /** What is written, in words that fit into "will write …". */
  output: string;
  /** About how many words it takes. */
  words: number;
}

/** Common practice, no source: from a couple of words to a note at work, each rung one step above the last. */
export const ladder: readonly Rung[] = [
  { code: 'two-words', output: 'two or three words', words: 3 },
  { code: 'name', output: 'first and last name', words: 2 },
  { code: 'date-time', output: 'a date and a time', words: 4 },
  { code: 'line', output: 'one line, for example an address line', words: 5 },
  { code: 'sentence', output: 'one sentence', words: 8 },
  { code: 'two-lines', output: 'two lines', words: 14 },
  { code: 'two-lines-no-pause', output: 'two lines without a pause', words: 14 },
  { code: 'list', output: 'a list of five items that another person can use', words: 10 },
  { code: 'message', output: 'a phone message with name, number and time', words: 12 },
  { code: 'note', output: 'a note of three lines', words: 20 },
  { code: 'form', output: 'one page of a form with small boxes', words: 20 },
  { code: 'amount', output: 'an amount of money in words and digits', words: 8 },
  { code: 'diary', output: 'a paragraph for a diary', words: 40 },
  { code: 'letter', output: 'a letter of half a page', words: 60 },
  { code: 'work-note', output: 'a note for work in a given time', words: 30 },
];

export interface ReadSample {
  /** Percent of words read, 0 to 100. */
  percent: number;
  words: number;
}

export interface NextStep {
  rung: Rung;
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
 * @param current code of the rung worked on, null to take it from the length of the last samples
 * @param mdc minimal detectable change in percentage points, or null
 * @param limits when a rung counts as climbed, and how far a step goes (`limitsOf`)
 */
export function nextStep(
  samples: readonly ReadSample[],
  current: string | null,
  mdc: number | null,
  { goalClimbedPercent, goalFirstStep, goalSamples }: Limits,
  rungs: readonly Rung[] = ladder,
): NextStep {
  const last = samples.slice(-goalSamples);
  if (last.length === 0) {
    return step(
      rungs[0]!,
      goalClimbedPercent,
      null,
      'No sample has been read yet: this is the first rung. Take a sample to fit it.',
    );
  }
  const percents = last.map((s) => s.percent);
  // A step stands above what was shown: above the usual sample and above the latest one.
  const level = Math.max(median(percents), percents.at(-1)!);
  const words = median(last.map((s) => s.words));
  const index = current === null ? longestWithin(rungs, words) : rungIndex(rungs, current);
  const here = rungs[index]!;
  const [low, high] = [Math.round(Math.min(...percents)), Math.round(Math.max(...percents))];
  const shown = low === high ? `${low} %` : `${low} to ${high} %`;
  const seen = `The last ${last.length === 1 ? 'sample shows' : `${last.length} samples show`} ${shown} of words read`;
  const above = rungs[Math.min(index + 1, rungs.length - 1)]!;
  if (level >= goalClimbedPercent) {
    return step(above, goalClimbedPercent, null, `${seen} with ${here.output}: ready for the next rung.`);
  }
  const wanted = level + Math.max(goalFirstStep * (goalClimbedPercent - level), mdc === null ? 0 : Math.floor(mdc) + 1);
  const target = Math.ceil(wanted);
  if (target > 100) {
    const why = `${seen}. A step that measurement could tell (${Math.round(mdc ?? 0)} points) would pass 100 %: climb by more writing or less help instead.`;
    return step(above, goalClimbedPercent, null, why);
  }
  const fits = mdc === null ? null : target - level > mdc;
  const against =
    mdc === null ? '' : `, more than the ${Math.round(mdc)} points that two samples of an unchanged hand differ`;
  return step(here, target, fits, `${seen}; the next step is ${target} %${against}.`);
}

/**
 * Staged targets on the way to a goal, leaving out steps that measurement could not tell.
 * @param baseline,goal percent of words
 */
export function stagedTargets(
  baseline: number,
  goal: number,
  mdc: number | null,
  { goalFirstStep, goalSecondStep }: Pick<Limits, 'goalFirstStep' | 'goalSecondStep'>,
): number[] {
  const targets: number[] = [];
  let from = baseline;
  for (const share of [goalFirstStep, goalSecondStep, 1]) {
    const target = Math.round(baseline + share * (goal - baseline));
    if (target - from > (mdc ?? 0)) {
      targets.push(target);
      from = target;
    }
  }
  return targets;
}

function step(rung: Rung, percent: number, largerThanMdc: boolean | null, because: string): NextStep {
  const wordsRight = Math.min(rung.words, Math.ceil((percent * rung.words) / 100 - 1e-9));
  return { rung, percent, wordsRight, wordsOf: rung.words, largerThanMdc, because };
}

function longestWithin(rungs: readonly Rung[], words: number): number {
  let best = 0;
  // Only the first rungs are told apart by length; later ones differ in use, and the therapist chooses them.
  for (const [i, rung] of rungs.entries()) {
    if (rung.code === 'two-lines-no-pause') break;
    if (rung.words <= words && rung.words >= rungs[best]!.words) best = i;
  }
  return best;
}

const rungIndex = (rungs: readonly Rung[], code: string): number =>
  Math.max(
    0,
    rungs.findIndex((rung) => rung.code === code || rung.output === code),
  );
