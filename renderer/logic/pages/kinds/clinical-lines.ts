/** Sentences with numbers for the therapist's own pages: each says what, how many, by whom, under which conditions. */
import type { Goal } from '../../../../db/types/goal.ts';
import type { ClientRecord } from '../../../../db/types/record.ts';
import type { Conditions } from '../../../../db/types/sample.ts';
import { goalSentence } from '../../goals/sentence.ts';
import { levelNames, signed } from '../../goals/levels.ts';
import { practiceSentence } from '../../program/ladder/practice-log.ts';
import type { ChangeExamination } from '../../../change/index.ts';
import { changeOf } from '../../record/change-samples.ts';
import { changeSentences } from '../../texts/change/change-words.ts';
import { differencesSentence } from '../../record/condition-changes.ts';
import { smallMultiples } from '../../progress/small-multiples.ts';
import { lengthWords } from '../../texts/dose-words.ts';
import { wilson } from '../../../statistics/wilson.ts';
import { toldEnglish } from '../../texts/screens/told-english.ts';
import { englishTelling } from '../../texts/screens/telling.ts';
import { rightOf } from '../../record/sample-legibility.ts';
import {
  dayOf,
  goalsOf,
  legibleOf,
  longDate,
  type PageInput,
  type ReadOccasion,
  setupOf,
  visitsUpTo,
} from '../sheet/page-facts.ts';

const readers = {
  unfamiliar: 'an unfamiliar reader',
  family: 'a reader who knows the client',
  therapist: 'the therapist',
} as const;

const percent = (share: number): string => `${Math.round(share * 100)} %`;

/** "18 of 24 words read (75 %, 95 % interval 55 to 88 %) by an unfamiliar reader, blind". */
export function legibilityWords(occasion: ReadOccasion): string {
  const { accuracy, wordsRight, words, reader, readers: count, blind } = occasion.legibility;
  const interval = wilson(Math.min(wordsRight, words), Math.max(1, words));
  const range = `${percent(accuracy)}, 95 % interval ${Math.round(interval.low * 100)} to ${percent(interval.high)}`;
  const who = count > 1 ? `${count} readers (mean; ${readers[reader]})` : readers[reader];
  const { told, decimals } = englishTelling;
  const read = told.reading.wordsRead(decimals(rightOf(occasion.legibility), 1, 0), words, range);
  return `${read} by ${who}, ${blind ? 'blind' : 'not blind'}`;
}

/** Conditions that were noted, in one sentence; '' when none was. */
export function conditionsWords(c: Conditions): string {
  const parts = [
    c.hand ? `${c.hand} hand` : '',
    c.pen,
    c.paper ? `on ${c.paper === 'plain' ? 'plain paper' : c.paper}` : '',
    c.time ? `at ${c.time}` : '',
    c.doseState === 'on' || c.doseState === 'off' ? `medicine ${c.doseState}` : '',
    c.minutesSinceDose !== null ? `${c.minutesSinceDose} min after the dose` : '',
    c.cue === 'none' ? 'no cue' : c.cue ? `${c.cue} cue` : '',
    c.grip ? `grip: ${c.grip}` : '',
    c.armSupport ? `arm: ${c.armSupport}` : '',
  ].filter(Boolean);
  return parts.length > 0 ? `${parts.join(', ')}.` : '';
}

/** What was read at this visit, against last time, and whether that is more than noise. */
export function legibilityLines(input: PageInput): string[] {
  const { now, before, differences } = legibleOf(input);
  const lines: string[] = [];
  if (now) {
    lines.push(`Legibility: ${legibilityWords(now)}.`);
    const conditions = conditionsWords(now.sample.conditions);
    if (conditions) lines.push(`Conditions: ${conditions}`);
    if (now.sample.seconds) lines.push(`Time taken: ${Math.round(now.sample.seconds)} s.`);
  }
  if (before) lines.push(`Last time (${longDate(before.day, input.locale)}): ${legibilityWords(before)}.`);
  if (differences.length > 0) lines.push(differencesSentence(differences, toldEnglish.conditions));
  if (!now && input.record.samples.some((s) => s.visitId === input.visitId))
    lines.push('Writing sample taken; nobody has read it yet.');
  return lines;
}

/** What the model says of change over all samples up to the visit. */
export const changeUpTo = (input: PageInput): ChangeExamination =>
  changeOf(input.record, input.limits, { to: dayOf(input) });

/** The same as sentences; '' while nothing was read. */
export function changeLine(input: PageInput): string {
  const found = changeUpTo(input);
  if (found.answer.verdict === 'nothing') return '';
  return changeSentences(found, input.limits.change, { day: (iso) => longDate(iso, input.locale) }).join(' ');
}

/** Measures that a note speaks of: size, steadiness, spaces, line, closed letters. The rest is on the progress screen. */
export const keyMeasures: readonly string[] = ['x-height', 'line-decrement', 'word-gap', 'baseline-rms', 'closure'];

const betterWords = { higher: 'higher is better', lower: 'lower is better', own: '' } as const;

/**
 * Measures with an earlier value and what to make of them: "Height of small letters: 2.9 mm (at the start 2.1 mm);
 * larger helps where writing had become small."
 * @param against the visit before, or the start
 */
export function measureLines(input: PageInput, codes: readonly string[], against: 'before' | 'start'): string[] {
  const day = dayOf(input);
  return smallMultiples(input.record, englishTelling).flatMap((measure) => {
    const upTo = measure.points.filter((point) => point.day <= day);
    const now = upTo.at(-1);
    if (!now || !codes.includes(measure.code)) return [];
    const earlier = upTo.filter((point) => point.day < now.day);
    const then = against === 'start' ? earlier[0] : earlier.at(-1);
    const since = against === 'start' ? 'at the start' : 'before';
    const meaning = measure.note || betterWords[measure.better];
    return [
      `${measure.label}: ${now.words}${then ? ` (${since} ${then.words})` : ''}${meaning ? `; ${meaning}` : ''}.`,
    ];
  });
}

/** Fatigue and pain around the sample of this visit. */
export function enduranceLines(input: PageInput): string[] {
  const sample = input.record.samples.filter((s) => s.visitId === input.visitId).at(-1);
  if (!sample) return [];
  const say = (name: string, before: number | null, after: number | null): string[] =>
    before === null && after === null
      ? []
      : [`${name} (0 to 10): ${before ?? '–'} before, ${after ?? '–'} after writing.`];
  return [
    ...say('Fatigue', sample.fatigueBefore, sample.fatigueAfter),
    ...say('Pain', sample.painBefore, sample.painAfter),
  ];
}

/** Seat, table and footrest in words, and what has to be done about the chair there is. */
export function setUpLines(input: PageInput): string[] {
  const figure = setupOf(input);
  if (!figure) return ['Seat and table: not measured.'];
  const say = (mm: number): string => lengthWords(mm, input.locale);
  const { chair } = figure;
  const change = chair && chair.changeMm !== 0 ? (chair.changeMm > 0 ? 'raised' : 'lowered') : '';
  return [
    `Seat ${say(figure.seatMm)}, table ${say(figure.tableMm)}${figure.footrestMm > 0 ? `, footrest ${say(figure.footrestMm)}` : ''}.`,
    ...(chair && change ? [`The chair of ${say(chair.nowMm)} is ${change} by ${say(Math.abs(chair.changeMm))}.`] : []),
    ...(figure.raiseTableMm > 0 ? [`The table is raised by ${say(figure.raiseTableMm)}.`] : []),
  ];
}

/** Home practice since the visit before; nothing at the first visit. */
export function homePracticeLines(input: PageInput): string[] {
  const previous = visitsUpTo(input).at(-2)?.date;
  if (previous === undefined) return [];
  const logs = input.record.practiceLogs.filter((log) => log.date > previous && log.date <= dayOf(input));
  return [
    logs.length === 0
      ? 'No home practice was logged since the last visit.'
      : `Home practice: ${practiceSentence(logs, toldEnglish.ladder, englishTelling.decimals)}`,
  ];
}

/** Latest level of a goal up to the visit. */
function levelOf(record: ClientRecord, goal: Goal, upTo: string): { level: number; note: string } | null {
  const days = new Map(record.visits.map((v) => [v.id, v.date]));
  const rating = record.goalRatings
    .filter((r) => r.goalId === goal.id && (days.get(r.visitId) ?? '') <= upTo)
    .sort((a, b) => (days.get(a.visitId) ?? '').localeCompare(days.get(b.visitId) ?? '') || a.at.localeCompare(b.at))
    .at(-1);
  return rating ? { level: rating.level, note: rating.note } : null;
}

/** Each goal with its level. */
export function goalLines(input: PageInput): string[] {
  return goalsOf(input).map((goal) => {
    const sentence = goalSentence(goal, 'the client', (iso) => longDate(iso, input.locale), englishTelling);
    const rated = levelOf(input.record, goal, dayOf(input));
    const status = goal.status === 'met' ? ' Met.' : '';
    const level = rated ? ` Level ${signed(rated.level)} (${levelNames[rated.level]}).` : ' Not rated yet.';
    return `${sentence.charAt(0).toUpperCase()}${sentence.slice(1)}${level}${status}${rated?.note ? ` ${rated.note}` : ''}`;
  });
}
