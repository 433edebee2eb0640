/** The one answer to "has it changed?", from readings and the clinic's repeat pairs. */
import type { ChangeLimits } from './change-limits.ts';
import type { ChangeNote, ChangeVerdict, Direction, ReadSample, RepeatPair, Verdict } from './change-types.ts';
import { judge, tells, type Judgement } from './judge.ts';
import { addVisit, phaseLikelihood, phaseOf, type Phase, type PhaseVisit } from './phase.ts';
import { changeQuantile, scaleRows, type Likelihood, type Posterior } from './posterior/posterior.ts';
import { asCounted, commonReaders, readersChange, readersDiffer } from './readers.ts';
import { clinicPrior } from './spread-prior.ts';
import { lossSign } from './steady-loss.ts';
import { sortStrata, type Comparison, type StrataResult } from './strata.ts';
import { currentSeries, type Series, type Visit } from './visits.ts';

export interface ChangeQuestion {
  samples: readonly ReadSample[];
  /** Of the whole clinic; those of another task family or kind of reader are not counted. */
  pairs?: readonly RepeatPair[];
  /** A loss has a noted explanation: it asks for a repeat and raises no flag. */
  explained?: boolean;
}

/** The verdict with what lies behind it, for sentences and pictures. */
export interface ChangeExamination {
  answer: ChangeVerdict;
  /** Visits compared, oldest first; empty when nothing was compared. */
  before: Visit[];
  now: Visit[];
  /** Visits left out, by their conditions. */
  leftOut: Visit[][];
  /** All visits of the series, oldest first. */
  visits: Visit[];
  posterior: Posterior | null;
  /** Kind of reader whose counts were looked at; null where nothing was read. */
  kind: string | null;
}

const NOTHING: ChangeVerdict = {
  verdict: 'nothing',
  probability: null,
  change: null,
  before: null,
  now: null,
  leaning: null,
  atLeastWords: null,
  perWords: null,
  visitSd: null,
  compared: 0,
  leftOut: 0,
  differs: [],
  notes: [],
  moreSamples: null,
  sinceDay: null,
  better: false,
  loss: null,
  chances: null,
};

const NO_PAIRS: readonly RepeatPair[] = [];

/** Visits that make a comparison possible where there is none yet. */
const SAMPLES_TO_BEGIN = 2;

/** Asks the model. @param limits from `changeLimits` */
export function examineChange(question: ChangeQuestion, limits: ChangeLimits): ChangeExamination {
  const series = currentSeries(question.samples, limits);
  if (!series)
    return { answer: { ...NOTHING }, before: [], now: [], leftOut: [], visits: [], posterior: null, kind: null };
  const sorted = sortStrata(series.visits);
  const { compared } = sorted;
  if (!compared) return notCompared(series, sorted);
  const { answer, posterior } = comparedAnswer(question, series, sorted, compared, limits);
  const key = compared.now[0]!.conditions;
  return {
    answer,
    ...compared,
    leftOut: sorted.strata.filter((visits) => JSON.stringify(visits[0]!.conditions) !== JSON.stringify(key)),
    visits: series.visits,
    posterior,
    kind: series.kind,
  };
}

function notCompared(series: Series, { strata, differs }: StrataResult): ChangeExamination {
  const { visits } = series;
  const oneDay = new Set(visits.map(({ day }) => day)).size === 1;
  const comparable = oneDay || strata.length === 1;
  const notes: ChangeNote[] = series.afterBreak ? ['break'] : [];
  if (oneDay) notes.push('one-visit');
  const answer: ChangeVerdict = {
    ...NOTHING,
    verdict: comparable ? 'cannot-tell' : 'not-comparable',
    leftOut: comparable ? 0 : visits.length,
    differs,
    notes,
    moreSamples: comparable ? SAMPLES_TO_BEGIN : null,
    sinceDay: series.since,
  };
  return { answer, before: [], now: [], leftOut: comparable ? [] : strata, visits, posterior: null, kind: series.kind };
}

function comparedAnswer(
  { pairs = NO_PAIRS, explained = false }: ChangeQuestion,
  series: Series,
  { strata, differs }: StrataResult,
  compared: Comparison,
  limits: ChangeLimits,
): { answer: ChangeVerdict; posterior: Posterior } {
  const common = commonReaders(compared);
  const before = compared.before.map((visit) => asCounted(visit, common));
  const now = compared.now.map((visit) => asCounted(visit, common));
  const prior = clinicPrior(pairs, compared.now[0]!.conditions.task, series.kind, limits);
  const atFirst = scaleRows(phaseLikelihood(phaseOf(before, 1), limits.readerSpread));
  const phase = phaseOf(now, limits.decay);
  const later = scaleRows(phaseLikelihood(phase, limits.readerSpread));
  const found = judge(atFirst, later, prior, limits);
  const differ = readersDiffer(compared, common, prior, limits);
  const verdict = differ && (found.verdict === 'up' || found.verdict === 'down') ? 'cannot-tell' : found.verdict;
  const notes: ChangeNote[] = [
    ...(series.afterBreak ? (['break'] as const) : []),
    ...(strata.length > 1 ? (['comparable-part'] as const) : []),
    ...(readersChange(compared, common) ? (['readers-change'] as const) : []),
    ...(differ ? (['readers-differ'] as const) : []),
    ...edgeNote([...before, ...now]),
  ];
  const asksForMore =
    verdict === 'cannot-tell' && !differ && !notes.some((n) => n === 'all-right' || n === 'none-right');
  const perWords = lowerMedian([...before, ...now].map(({ words }) => words));
  const answer: ChangeVerdict = {
    verdict,
    probability: verdict === 'steady' ? found.chances.steady : Math.max(found.chances.up, 1 - found.chances.up),
    change: found.change,
    before: found.before,
    now: found.now,
    leaning: verdict === 'cannot-tell' && !differ ? leaningOf(found, limits) : null,
    atLeastWords: atLeastWords(verdict, found, perWords, limits),
    perWords,
    visitSd: found.visitSd,
    compared: before.length + now.length,
    leftOut: series.visits.length - before.length - now.length,
    differs,
    notes,
    moreSamples: asksForMore ? moreSamples(atFirst, phase, now.at(-1)!, found.now, prior, limits) : null,
    sinceDay: series.since,
    better: found.chances.up >= limits.betterChance,
    loss: lossSign({ before, now, atFirst, down: 1 - found.chances.up }, prior, limits, explained),
    chances: found.chances,
  };
  return { answer, posterior: found.posterior };
}

function edgeNote(visits: readonly PhaseVisit[]): ChangeNote[] {
  if (visits.every(({ right, words }) => right === words)) return ['all-right'];
  return visits.every(({ right }) => right === 0) ? ['none-right'] : [];
}

function leaningOf({ chances }: Judgement, limits: ChangeLimits): Direction | null {
  if (chances.up >= limits.leaning) return 'up';
  return chances.up <= 1 - limits.leaning ? 'down' : null;
}

/** Whole words of a visit that the change has at least, with `atLeastChance`; for up and down alone. */
function atLeastWords(
  verdict: Verdict,
  { posterior }: Judgement,
  perWords: number,
  limits: ChangeLimits,
): number | null {
  const tail = 1 - limits.atLeastChance;
  if (verdict === 'up') return Math.floor(changeQuantile(posterior.change, tail) * perWords + 1e-9);
  if (verdict === 'down') return Math.floor(-changeQuantile(posterior.change, 1 - tail) * perWords + 1e-9);
  return null;
}

function lowerMedian(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.floor((sorted.length - 1) / 2)]!;
}

/**
 * How many further visits like the latest, with the share right as now, would tell; null beyond the most.
 * @param phase of the visits now; the further ones are added to it
 * @param level now, percent
 */
function moreSamples(
  before: Likelihood,
  phase: Phase,
  last: PhaseVisit,
  level: number,
  prior: readonly number[],
  limits: ChangeLimits,
): number | null {
  const further: PhaseVisit = { ...last, right: (last.words * level) / 100 };
  for (let k = 1; k <= limits.moreSamplesMost; k++) {
    addVisit(phase, further);
    if (tells(before, scaleRows(phaseLikelihood(phase, limits.readerSpread)), prior, limits)) return k;
  }
  return null;
}
