/** One program line from an item, the rules that brought it in and the client's facts. */
import type { ProgramInput } from '../../../../db/types/program-input.ts';
import type { Dose, LineKind, ProgramLine } from '../../../../db/types/program.ts';
import type { LibraryItem, Rule, RuleTable } from '../../../../db/types/rules.ts';
import { meets } from '../facts/condition-holds.ts';
import { boutLines, restMinutes } from './dose.ts';
import type { Facts } from '../facts/fact-types.ts';
import { lineId } from './line-id.ts';

/** Kinds that count as items of the day and take minutes. */
export const countedKinds: ReadonlySet<LineKind> = new Set<LineKind>(['warm-up', 'exercise', 'writing']);

/** Minutes a day that a dose takes. */
export const dayMinutes = (dose: Dose): number => dose.minutes * Math.max(1, dose.timesPerDay);

const times = ['', 'once', 'twice', 'three times', 'four times', 'five times', 'six times'];

/** "10 minutes, twice a day, 5 days a week." with the way to do it before it. */
export function doseText(dose: Dose, how: string): string {
  if (dose.minutes === 0) return how;
  const minutes = `${dose.minutes} minute${dose.minutes === 1 ? '' : 's'}`;
  const often = dose.timesPerDay > 1 ? `, ${times[dose.timesPerDay] ?? `${dose.timesPerDay} times`} a day` : ' a day';
  const days = dose.daysPerWeek > 0 ? `, ${dose.daysPerWeek} days a week` : '';
  return `${how} ${minutes}${often}${days}.`.trim();
}

/** The way to do it: what the text of a dose says before the minutes. */
export const howOf = (dose: Dose): string =>
  dose.text.replace(/ ?\d+ minutes? a day.*$| ?\d+ minutes?, \w+( times)? a day.*$/, '').trim();

/** A changed number of minutes, with its text. */
export function withMinutes(dose: Dose, minutes: number, timesPerDay: number): Dose {
  const how = howOf(dose);
  const changed = { ...dose, minutes, timesPerDay };
  return { ...changed, text: doseText(changed, how) };
}

/**
 * Dose of the day's main writing. A fall along the lines gives bouts (part H); marked fatigue or pain two short times;
 * attention of 1 or less two-minute bouts; else the item's own.
 */
function writingDose(base: Dose, input: ProgramInput, facts: Facts, rules: RuleTable): Dose {
  const row = (code: string): Dose => rules.doses.find((each) => each.code === code)?.dose ?? base;
  const limit = (code: string, other: number): number => facts.thresholds.get(code) ?? other;
  const grade = (code: string): number => facts.findings.get(code)?.grade ?? 3;
  const onset = facts.measures.get('onset-line') ?? null;
  if (onset !== null) {
    const lines = boutLines(onset, onset, { share: limit('bout-share', 0.8), most: limit('bout-most', 10) });
    const minutes = lines * (input.minutesALine ?? limit('minutes-a-line', 0.75));
    const sets = limit('bouts-a-day', 3);
    const rest = Math.ceil(restMinutes(minutes, limit('rest-least', 2)).min);
    const how = `${lines} line${lines === 1 ? '' : 's'}, then rest ${rest} minutes. Do this ${sets} times.`;
    const session = Math.min(15, Math.max(2, Math.round(minutes * sets)));
    return {
      ...base,
      minutes: session,
      // Two short sessions are better spread than a longer one.
      timesPerDay: session <= 5 ? 2 : 1,
      sets,
      lines,
      restMinutes: rest,
      text: how,
    };
  }
  if (grade('attention') <= 1) return row('write-bouts-2');
  if (grade('fatigue') <= 1 || grade('endurance') <= 1 || grade('pain') <= 1 || facts.diagnoses.has('weakens-with-use'))
    return row('write-short');
  return base;
}

/** Sentences that print with an item for this client. */
export function cautionsFor(item: LibraryItem, facts: Facts, rules: RuleTable): string[] {
  return item.cautions.flatMap((code) => {
    const row = rules.cautionTexts.find((each) => each.code === code);
    return row && (row.when === null || meets(row.when, facts) !== null) ? [row.text] : [];
  });
}

/** Letters that readers took for others most often, most frequent first. */
function failingLetters(input: ProgramInput, most: number): string[] {
  const counts = new Map<string, number>();
  for (const { intended, read, count } of input.confusions) {
    if (/^\p{L}$/u.test(intended) && intended !== read) counts.set(intended, (counts.get(intended) ?? 0) + count);
  }
  return [...counts]
    .sort(([a, n], [b, m]) => m - n || (a < b ? -1 : 1))
    .slice(0, most)
    .map(([letter]) => letter);
}

/** The item's words with the client's own letters in place of `{letters}`. */
export function wordsOf(item: Pick<LibraryItem, 'text'>, input: ProgramInput, rules: RuleTable): string {
  const most = rules.thresholds.find((each) => each.code === 'letters-taught')?.value ?? 3;
  const letters = failingLetters(input, most);
  return item.text.replace('{letters}', letters.length > 0 ? letters.join(', ') : 'those on your sheet');
}

export interface LineReason {
  rule: Rule;
  uses: string[];
}

/** @param reasons rules that brought it in, first one first; empty = added from the library by hand */
export function lineOf(
  item: LibraryItem,
  reasons: readonly LineReason[],
  input: ProgramInput,
  facts: Facts,
  rules: RuleTable,
): ProgramLine {
  const first = reasons[0]?.rule;
  const own = rules.doses.find((each) => each.code === (first?.dose ?? item.dose))?.dose;
  const base: Dose = own ?? {
    minutes: 0,
    sets: null,
    reps: null,
    lines: null,
    restMinutes: null,
    timesPerDay: 0,
    daysPerWeek: 0,
    text: '',
  };
  const main = first !== undefined && isMain(first);
  const dose = main ? writingDose(base, input, facts, rules) : base;
  const join = (parts: readonly string[], most: number): string => [...new Set(parts)].join(' ').slice(0, most);
  const until = first ? `Up: ${first.advance}${first.stepBack === '' ? '' : ` Back: ${first.stepBack}`}` : '';
  return {
    id: lineId(item.code),
    item: item.code,
    kind: item.kind,
    tier: item.tier,
    title: item.title,
    text: wordsOf(item, input, rules),
    dose: { ...dose, text: doseText(dose, dose.text) },
    rule: first?.id ?? null,
    findings: [...new Set(reasons.flatMap((each) => each.uses))],
    source: first?.source ?? item.source,
    sourceNote: join(
      [first?.sourceNote ?? '', item.sourceNote].filter((each) => each !== ''),
      400,
    ),
    cautions: cautionsFor(item, facts, rules),
    because: first
      ? join(
          reasons.map((each) => each.rule.because),
          600,
        )
      : 'Added from the library by the therapist.',
    until: until.slice(0, 400),
    edited: false,
    override: null,
  };
}

/** Rules W10 to W39, and the training of the other hand, give the day's main writing. */
export const isMain = (rule: Rule): boolean => /^(W[123]\d|R47)$/.test(rule.id);
