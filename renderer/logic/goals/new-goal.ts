import { daysLater } from '../texts/days.ts';
import type { Goal, GoalRung } from '../../../db/types/goal.ts';
import type { Sample } from '../../../db/types/sample.ts';
import type { Occasion } from '../record/occasions.ts';
import type { Limits } from '../rules/limits.ts';
import { smallestChange, type ChangeLimits } from '../../change/index.ts';
import { buildLevels, threeLevels, type GoalLevels } from './levels.ts';
import { nextStep, rungAbove, type ReadSample, wordsOfPercent } from './goal-ladder.ts';
import type { Told } from '../texts/screens/en/screens-en.ts';
import type { Telling } from '../texts/screens/telling.ts';
import { startLevel } from './start-level.ts';

/** A goal without the stamps that are set when it is saved. */
export type GoalDraft = Omit<Goal, 'at' | 'by'>;

/** Samples that were read, as the ladder needs them; probes count too, they are writing without help. */
export const readSamples = (occasions: readonly Occasion[]): ReadSample[] =>
  occasions.flatMap((o) => (o.legibility ? [{ percent: o.legibility.accuracy * 100, words: o.legibility.words }] : []));

/**
 * A goal as it could be agreed on now: the next reachable step, with the paper, aid and cue of the last sample.
 * @param setOn day of agreeing, YYYY-MM-DD
 * @param ladder rungs in use
 * @param current what the goal in force says is written, or null
 * @param visitSd how much the client varies from visit to visit, from the posterior; null = not known
 */
export function proposedGoal(
  ids: { id: string; clientId: string },
  occasions: readonly Occasion[],
  mdc: number | null,
  wants: string,
  setOn: string,
  limits: Limits,
  ladder: readonly GoalRung[],
  current: string | null,
  visitSd: number | null,
  telling: Telling,
): GoalDraft {
  const words = telling.told.goals;
  const last = occasions.at(-1);
  const read = occasions.findLast((o) => o.legibility);
  const step = nextStep(readSamples(occasions), current, mdc, limits, ladder, words);
  const tries = { of: 3, need: 2 };
  const baseline = read ? Math.round(read.legibility!.accuracy * 100) : null;
  return {
    ...ids,
    output: step.rung.output,
    paper: last?.sample.conditions.paper ?? '',
    aid: aidOf(last?.sample),
    cue: last?.sample.conditions.cue ?? 'none',
    reader: read?.legibility?.reader === 'family' ? 'family' : 'unfamiliar',
    wordsOf: step.wordsOf,
    percent: step.percent,
    tries,
    dueOn: daysLater(setOn, limits.goalWeeks * 7),
    setOn,
    baseline: read ? startLevel(read.legibility!, telling) : '',
    because: wants,
    levels: levelsFor(baseline, step.percent, step.wordsOf, tries.of, levelNoise(visitSd, limits), words),
    weight: 1,
    nextStep: rungAbove(ladder, step.rung.output),
    replaces: null,
    status: 'active',
  };
}

/** A new version of a goal; the old one keeps its ratings. */
export function revisedGoal(
  goal: Goal,
  id: string,
  setOn: string,
  occasions: readonly Occasion[],
  mdc: number | null,
  limits: Limits,
  ladder: readonly GoalRung[],
  visitSd: number | null,
  telling: Telling,
): GoalDraft {
  const ids = { id, clientId: goal.clientId };
  const fresh = proposedGoal(ids, occasions, mdc, goal.because, setOn, limits, ladder, goal.output, visitSd, telling);
  const { at: _at, by: _by, ...kept } = goal;
  return {
    ...kept,
    id,
    setOn,
    dueOn: fresh.dueOn,
    output: fresh.output,
    wordsOf: fresh.wordsOf,
    percent: fresh.percent,
    baseline: fresh.baseline || goal.baseline,
    levels: fresh.levels,
    nextStep: fresh.nextStep,
    replaces: goal.id,
    status: 'active',
  };
}

/**
 * How much the tries of a goal vary: a level narrower than the noise would be reached or missed by chance.
 * Shapes: spread from visit to visit, logit (the client's own where the model knows it), and the model's numbers.
 */
export interface LevelNoise {
  visitSd: number;
  limits: Pick<ChangeLimits, 'decay'>;
}

/** @param visitSd from the posterior; null: what a clinic's clients usually vary from visit to visit */
export const levelNoise = (visitSd: number | null, { change }: Pick<Limits, 'change'>): LevelNoise => ({
  visitSd: visitSd ?? change.pairSpread * change.visitsApart,
  limits: change,
});

/** Least width of a level judged by all tries together, percentage points. */
function leastWidth(percent: number, wordsOf: number, tries: number, { visitSd, limits }: LevelNoise): number {
  const p = Math.min(0.95, Math.max(0.05, percent / 100));
  return smallestChange({ p, words: wordsOf, n1: 1, n2: tries, sd: visitSd }, limits).levelWidth;
}

/**
 * Level texts of a goal; a baseline near the bottom could hardly worsen, so it lies at -2. In percent of words where one
 * word is less than a step; else in words of all tries together, because no smaller step could be counted.
 * @param baseline,expected percent of words
 * @param wordsOf words of one try; null = not known
 */
export function levelsFor(
  baseline: number | null,
  expected: number | null,
  wordsOf: number | null,
  tries: number,
  noise: LevelNoise,
  words: Told['goals'],
): Goal['levels'] {
  if (baseline === null || expected === null) return ['', '', '', '', ''];
  const built = goalLevels(baseline, expected, wordsOf, tries, false, noise, words);
  return built.problems.length === 0 ? built.texts : ['', '', '', '', ''];
}

/**
 * Levels of a goal with what is wrong with them, as for `levelsFor`: five where each is wider than the noise, else three,
 * else a sentence about what would make it possible.
 */
export function goalLevels(
  baseline: number,
  expected: number,
  wordsOf: number | null,
  tries: number,
  couldWorsen: boolean,
  noise: LevelNoise,
  words: Told['goals'],
): GoalLevels {
  const five = fiveLevels(baseline, expected, wordsOf, tries, couldWorsen, words);
  if (!wordsOf || !(expected > baseline)) return five;
  const width = leastWidth(expected, wordsOf, tries, noise);
  if (five.problems.length === 0 && (expected - baseline) / (couldWorsen ? 1 : 2) >= width) return five;
  const three = threeLevels({ unit: words.percentOfWords, min: 0, max: 100 }, Math.round(expected), width, words);
  if (three) return three;
  const longer = Array.from({ length: MOST_WORDS }, (_, i) => i + 1).find(
    (most) => most > wordsOf && expected + Math.ceil(leastWidth(expected, most, tries, noise)) <= 100,
  );
  return { ...five, problems: [words.tooNarrow(tries, wordsOf, Math.ceil(width), longer ?? null)] };
}

/** Longest text of one try that is asked for. */
const MOST_WORDS = 120;

function fiveLevels(
  baseline: number,
  expected: number,
  wordsOf: number | null,
  tries: number,
  couldWorsen: boolean,
  told: Told['goals'],
): GoalLevels {
  const step = (expected - baseline) / (couldWorsen ? 1 : 2);
  if (!wordsOf || step >= 100 / wordsOf)
    return buildLevels({ unit: told.percentOfWords, min: 0, max: 100 }, baseline, expected, couldWorsen, told);
  const words = wordsOf * tries;
  const unit = tries > 1 ? told.wordsOfTogether(words, tries) : told.wordsOf(words);
  const [from, to] = [Math.round((baseline * words) / 100), wordsOfPercent(expected, words)];
  return buildLevels({ unit, min: 0, max: words }, from, to, couldWorsen, told);
}

/** The percent in a baseline text such as "18 of 24 words read (75 %)"; null when there is none. */
export function baselinePercent(text: string): number | null {
  const percent = /(\d+(?:[.,]\d+)?)\s*%/.exec(text);
  if (percent) return Math.round(Number(percent[1]!.replace(',', '.')));
  const counted = /(\d+(?:[.,]\d+)?)\s*(?:of|de|von)\s*(\d+)/.exec(text);
  return counted && Number(counted[2]) > 0
    ? Math.round((100 * Number(counted[1]!.replace(',', '.'))) / Number(counted[2]))
    : null;
}

const aidOf = (sample: Sample | undefined): string =>
  [sample?.conditions.pen, sample?.conditions.grip].filter((part) => part?.trim()).join(', ');
