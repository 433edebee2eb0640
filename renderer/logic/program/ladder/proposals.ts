/**
 * Advance, hold or step back: a proposal with its evidence, from what readers read and how tired practice made.
 * Words read are judged by the model of change (`StepSigns`); letters, fatigue and pain by the criteria of common
 * practice. It proposes; nothing moves by itself.
 */
import { daysBetween } from '../../texts/days.ts';
import { median } from '../../../statistics/order-statistics.ts';
import { threshold } from '../../../../db/types/rule-table/threshold.ts';
import type { ProgramLine, Tier } from '../../../../db/types/program.ts';
import type { StepSigns } from '../../../change/index.ts';
import type { RuleTable } from '../../../../db/types/rules.ts';
import type { Telling } from '../../texts/screens/telling.ts';
import { type Dimension, type Move, stepDown, stepUp } from './paper-ladder.ts';

export interface Session {
  /** YYYY-MM-DD. */
  day: string;
  /** Words read, percent; null = nobody read it. */
  read: number | null;
  /** Words written; fewer than 12 are too short to judge alone. */
  words: number | null;
  /** The letters in practice: how many of those written a reader read as meant; null = none, or not known. */
  letters?: { right: number; of: number } | null;
  fatigueRise: number | null;
  painRise: number | null;
  /** Fatigue before a day's practice, 0 to 10; null = not said, or no practice day. */
  startedAt?: number | null;
}

/** What came back of the practice that was asked for. */
export interface PracticeBack {
  days: number;
  /** null with one day. */
  daysPerWeek: number | null;
  daysAsked: number;
  minutesADay: number | null;
  minutesAsked: number;
  linesADay: number | null;
}

export interface Proposal {
  kind: 'advance' | 'hold' | 'step-back' | 'review';
  /** The one change; null when nothing is to change. */
  move: Move | null;
  because: string;
  /** Each fact that it rests on, a sentence. */
  evidence: string[];
  rule: 'PROG' | 'HOLD' | 'REG' | 'REVIEW';
}

export interface Standing {
  lines: readonly ProgramLine[];
  tier: Tier;
  xHeightMm: number | null;
  /** What the last step changed, where it is known. */
  lastChange: Dimension | null;
  practice?: PracticeBack | null;
}

/** Shortest sample that is judged by itself, words (17 of 21 words is 60 to 92 %). */
const shortest = 12;

/** Days of the last week of practice that began more tired than was usual before that week. */
function tiredStarts(ordered: readonly Session[], points: number): Session[] {
  const said = ordered.filter((each) => each.startedAt != null);
  const last = said.at(-1);
  if (!last) return [];
  const before = said.filter((each) => daysBetween(each.day, last.day) > 6).map((each) => each.startedAt ?? 0);
  if (before.length < 3) return [];
  const usual = median(before)!;
  return said.filter((each) => daysBetween(each.day, last.day) <= 6 && (each.startedAt ?? 0) >= usual + points);
}

/** The practice that came back, as a sentence; none where nothing did. */
function practiceWords(
  practice: PracticeBack | null | undefined,
  { told: { ladder: words }, decimals }: Telling,
): string[] {
  if (!practice || practice.days === 0) return [];
  const { daysPerWeek, daysAsked, minutesADay, minutesAsked, linesADay } = practice;
  const often =
    daysPerWeek === null ? words.practicedOneDay : words.practicedDays(decimals(daysPerWeek, 1, 0), daysAsked);
  return [words.practiced(often, minutesADay, minutesAsked, linesADay)];
}

/**
 * @param sessions readings and ratings in order of time, this client's only
 * @param signs what the model of change says of the retests since the last approved step
 */
export function propose(
  sessions: readonly Session[],
  signs: StepSigns,
  standing: Standing,
  rules: RuleTable,
  telling: Telling,
): Proposal {
  const proposal = judged(sessions, signs, standing, rules, telling);
  return { ...proposal, evidence: [...proposal.evidence, ...practiceWords(standing.practice, telling)] };
}

function judged(
  sessions: readonly Session[],
  signs: StepSigns,
  standing: Standing,
  rules: RuleTable,
  { told: { ladder: words } }: Telling,
): Proposal {
  const limit = (code: string): number => threshold(rules.thresholds, code);
  const lettersGood = limit('letters-good');
  // On squares it is the letters in practice that count; words come with the next tier.
  const byLetters = ({ letters }: Session): boolean =>
    standing.tier <= 2 &&
    letters != null &&
    letters.of >= limit('exposures-least') &&
    letters.right / letters.of >= lettersGood / 100;
  const ordered = [...sessions].sort((a, b) => Date.parse(a.day) - Date.parse(b.day));
  const last = ordered.at(-1);
  const back = (because: string, evidence: string[], length = false): Proposal => ({
    kind: 'step-back',
    move: stepDown(standing.lines, standing.tier, length ? 'length' : standing.lastChange, rules, words),
    because,
    evidence,
    rule: 'REG',
  });
  const stay = (because: string, evidence: string[]): Proposal => ({
    kind: 'hold',
    move: null,
    because,
    evidence,
    rule: 'HOLD',
  });
  if (!last) return stay(words.nothingBack, []);

  if ((last.painRise ?? 0) >= limit('pain-rise-stop')) {
    return back(words.painMore, [words.painRose(last.day, last.painRise ?? 0)], true);
  }
  if ((last.fatigueRise ?? 0) >= limit('fatigue-rise-stop')) {
    return back(words.tires, [words.fatigueRose(last.day, last.fatigueRise ?? 0)], true);
  }

  const tired = tiredStarts(ordered, limit('tired-start-points'));
  if (tired.length >= limit('tired-start-days')) {
    return back(
      words.startsTired,
      tired.map((each) => words.fatigueBefore(each.day, each.startedAt ?? 0)),
      true,
    );
  }

  const read = ordered.filter((each): each is Session & { read: number } => each.read !== null);
  const said = (list: readonly (Session & { read: number })[]): string[] =>
    list.map((each) =>
      words.read(
        each.day,
        Math.round(each.read),
        each.words,
        standing.tier <= 2 && each.letters ? each.letters.right : null,
        each.letters?.of ?? 0,
      ),
    );
  if (read.length === 0) return stay(words.nobodyRead, []);

  if (signs.back) {
    return back(words.belowStart, said(read.slice(-3)));
  }

  const need = limit('good-sessions');
  const run = read.slice(-need);
  if (run.length === need && (signs.ready || run.every(byLetters))) {
    const short = run.find((each) => each.words !== null && each.words < shortest);
    if (short) return stay(words.tooFewWords, said(run));
    const rises = run.map((each) => each.fatigueRise);
    if (rises.some((each) => each === null)) return stay(words.fatigueNotNoted, said(run));
    const tires = rises.some((each) => (each ?? 0) > limit('fatigue-rise-step'));
    const hurt = run.some((each) => (each.painRise ?? 0) > 0);
    if (!tires && !hurt) {
      const move = stepUp(standing.lines, standing.tier, standing.xHeightMm, rules, words);
      const evidence = [...said(run), words.fatigueAtMost(Math.max(...rises.map((each) => each ?? 0)))];
      if (!move) return { kind: 'review', move: null, because: words.topOfLadder, evidence, rule: 'REVIEW' };
      return {
        kind: 'advance',
        move,
        because: signs.ready ? words.veryLikely(limit('step-ready-level')) : words.sessionsRunning(need, lettersGood),
        evidence,
        rule: 'PROG',
      };
    }
    return stay(hurt ? words.wellAndPain : words.wellAndTires, said(run));
  }

  if (signs.plateau) {
    const { daysPerWeek = null, daysAsked = 0 } = standing.practice ?? {};
    const little = daysPerWeek !== null && daysPerWeek < daysAsked * limit('little-practice-share');
    return {
      kind: 'review',
      move: null,
      because: little ? words.littlePractice : words.plateau,
      evidence: said(read.slice(-4)),
      rule: 'REVIEW',
    };
  }
  return stay(signs.better ? words.better : words.noChangeYet, said(read.slice(-3)));
}
