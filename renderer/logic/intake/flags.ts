/**
 * The one place that decides whether a red flag stops the work. The screen, the draft program and the approval
 * of a program all ask `openFlags` again with the facts as they are then.
 */
import type { IntakeAnswer, RedFlagAnswer } from '../../../db/types/intake.ts';
import type { FlagFromAnswer, RedFlag, RedFlagTable } from '../../../db/types/items.ts';
import type { Told } from '../texts/screens/en/screens-en.ts';
import { latestAnswers, latestFlagAnswers } from '../record/latest-answers.ts';

/** emergency: stop everything. same-day: no exercise lines. reviewed: go on with the cautions active. clear: none. */
type StopLevel = 'emergency' | 'same-day' | 'reviewed' | 'clear';

/** Steady loss of words read, as the model of change says it. */
export interface SteadyLoss {
  /** When the sample that showed it was taken. */
  at: string;
  /** Plain sentence. */
  because: string;
}

export interface FlagInput {
  redFlags: readonly RedFlagAnswer[];
  intakeAnswers: readonly IntakeAnswer[];
  /** null or nothing: none. */
  loss?: SteadyLoss | null;
  /** Signs in samples and in the practice log. */
  signs?: readonly Sign[];
  /** Ask for every question at this visit; without it a question counts as asked once it was ever answered. */
  visitId?: string;
}

export interface FlagNotice {
  code: string;
  title: string;
  grade: RedFlag['grade'];
  path: RedFlag['path'];
  /** Where it comes from: `redFlag/<id>`, `intakeAnswer/<id>` or `retests`. */
  sources: string[];
  /** Plain sentences, one a source. */
  because: string[];
  doNow: string[];
  call: RedFlag['call'];
  /** Who reviewed it and when; null while open. */
  review: { reviewer: string; on: string; outcome: string } | null;
}

export interface FlagState {
  level: StopLevel;
  /** Open flags, emergencies first, in the order of the table. */
  open: FlagNotice[];
  /** Known and medically reviewed; their cautions stay active. */
  reviewed: FlagNotice[];
  /** Codes of questions without an answer. Unasked is not clear. */
  unasked: string[];
  /** Exercises may be drafted: no open flag. */
  mayCompose: boolean;
  /** A program may be approved: no open flag and every question asked. */
  mayApprove: boolean;
  /** What stands in the way, one sentence; '' when nothing does. */
  sentence: string;
}

/** Something that raises a flag, besides answers. */
export interface Sign {
  flag: string;
  /** When it was noted. */
  at: string;
  source: string;
  because: string;
}

const triggers = (rule: FlagFromAnswer, answer: IntakeAnswer): boolean => {
  if (answer.item !== rule.item) return false;
  if (answer.detail !== null && rule.details.includes(answer.detail)) return true;
  if (rule.gradeAtMost !== null && answer.grade !== null && answer.grade <= rule.gradeAtMost) return true;
  const { before, after } = answer;
  const highest = Math.max(before ?? -1, after ?? -1);
  if (rule.ratingAtLeast !== null && highest >= rule.ratingAtLeast) return true;
  return rule.riseAtLeast !== null && before !== null && after !== null && after - before >= rule.riseAtLeast;
};

/** The first rule of a flag that an answer meets; more general rules follow the specific ones in the table. */
function signsFromAnswers(answers: readonly IntakeAnswer[], table: RedFlagTable): Sign[] {
  return latestAnswers(answers).flatMap((answer) => {
    const met = table.fromAnswers.filter((rule) => triggers(rule, answer));
    // Skin scored 0 because it is hot needs no second flag for broken skin.
    const named = met.filter((rule) => rule.details.length > 0);
    const rules = answer.item === 'skin' && named.length > 0 ? named : met;
    const seen = new Set<string>();
    return rules.flatMap((rule) => {
      if (seen.has(rule.flag)) return [];
      seen.add(rule.flag);
      return [{ flag: rule.flag, at: answer.at, source: `intakeAnswer/${answer.id}`, because: rule.because }];
    });
  });
}

function signsFromQuestions(answers: readonly RedFlagAnswer[], table: RedFlagTable, words: Told['flags']): Sign[] {
  const flagOf = (code: string): RedFlag | undefined => table.flags.find((flag) => flag.code === code);
  return (
    answers
      // The review of a flag that no question asks for is no sign of its own: the sign is the fact it came from.
      .filter((answer) => answer.present && !(answer.review !== null && flagOf(answer.flag)?.asked === false))
      .map((answer) => {
        const question = flagOf(answer.flag)?.question ?? '';
        const note = answer.note.trim();
        const because = [words.yesTo(question), note].filter(Boolean).join(' ');
        return { flag: answer.flag, at: answer.at, source: `redFlag/${answer.id}`, because };
      })
  );
}

/** The review that covers a flag: the latest one recorded; signs seen after it open the flag again. */
function reviewOf(answers: readonly RedFlagAnswer[], flag: string): { answer: RedFlagAnswer; at: number } | null {
  const reviews = answers.filter((answer) => answer.flag === flag && answer.present && answer.review !== null);
  const latest = reviews.sort((a, b) => Date.parse(a.at) - Date.parse(b.at)).at(-1);
  return latest ? { answer: latest, at: Date.parse(latest.at) } : null;
}

/**
 * Decides from all facts whether anything stops the work, and how.
 * A flag answered with yes stays open until a review is recorded, also when a later visit answers no.
 */
export function openFlags(input: FlagInput, table: RedFlagTable, words: Told['flags']): FlagState {
  const answers = latestFlagAnswers(input.redFlags);
  const signs = [
    ...signsFromQuestions(answers, table, words),
    ...signsFromAnswers(input.intakeAnswers, table),
    ...(input.signs ?? []),
    ...(input.loss ? [{ flag: table.steadyLoss.flag, source: 'retests', ...input.loss }] : []),
  ];

  const open: FlagNotice[] = [];
  const reviewed: FlagNotice[] = [];
  for (const flag of table.flags) {
    const own = signs.filter((sign) => sign.flag === flag.code);
    if (own.length === 0) continue;
    const review = reviewOf(answers, flag.code);
    const since = review ? own.filter((sign) => Date.parse(sign.at) > review.at) : own;
    const shown = since.length > 0 ? since : own;
    const again = review && since.length > 0 ? [words.seenAgain] : [];
    const notice: FlagNotice = {
      code: flag.code,
      title: flag.title,
      grade: flag.grade,
      path: flag.path,
      sources: shown.map((sign) => sign.source),
      because: [...shown.map((sign) => sign.because), ...again],
      doNow: flag.doNow,
      call: flag.call,
      review:
        review?.answer.review && since.length === 0
          ? {
              reviewer: review.answer.review.reviewer,
              on: review.answer.review.on,
              outcome: review.answer.review.outcome,
            }
          : null,
    };
    (notice.review ? reviewed : open).push(notice);
  }
  open.sort((a, b) => Number(b.grade === 'emergency') - Number(a.grade === 'emergency'));

  const asked = new Set(
    answers.filter((answer) => !input.visitId || answer.visitId === input.visitId).map((answer) => answer.flag),
  );
  const unasked = table.flags.filter((flag) => flag.asked && !asked.has(flag.code)).map((flag) => flag.code);
  const level: StopLevel = open.some((flag) => flag.grade === 'emergency')
    ? 'emergency'
    : open.length > 0
      ? 'same-day'
      : reviewed.length > 0
        ? 'reviewed'
        : 'clear';
  return {
    level,
    open,
    reviewed,
    unasked,
    mayCompose: open.length === 0,
    mayApprove: open.length === 0 && unasked.length === 0,
    sentence: sentenceFor(open, unasked.length, words),
  };
}

function sentenceFor(open: readonly FlagNotice[], unasked: number, words: Told['flags']): string {
  const first = open[0];
  if (!first) return unasked === 0 ? '' : words.notAsked(unasked);
  const say = first.grade === 'emergency' ? words.stopEverything : words.noExercises;
  return say(first.title, open.length - 1);
}
