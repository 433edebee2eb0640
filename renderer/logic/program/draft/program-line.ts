/** One program line from an item, the rules that brought it in and the client's facts. */
import type { Dose, LineKind, ProgramLine, Tier } from '../../../../db/types/program.ts';
import type { LibraryItem, Rule, RuleTable } from '../../../../db/types/rules.ts';
import { meets } from '../facts/condition-holds.ts';
import { byCode } from '../../../../db/types/rule-table/once-for.ts';
import { filled } from '../../texts/said-line.ts';
import { additionKey, lettersOnSheet, textKey } from '../../texts/text-keys.ts';
import type { Facts } from '../facts/fact-types.ts';
import { cautionsNamed, cautionsOn } from './caution-rows.ts';
import { lineId } from './line-id.ts';
import type { LineReason, WordedItem } from './proposal-types.ts';
import { toldEnglish } from '../../texts/screens/told-english.ts';

/** Kinds that count as items of the day and take minutes. */
export const countedKinds: ReadonlySet<LineKind> = new Set<LineKind>(['warm-up', 'exercise', 'writing']);

/** Minutes a day that a dose takes; 0 where minutes do not apply. */
export const dayMinutes = (dose: Pick<Dose, 'minutes' | 'timesPerDay'>): number =>
  (dose.minutes ?? 0) * (dose.timesPerDay ?? 1);

/** Minutes a day of all lines, whole. */
export const minutesADay = (lines: readonly Pick<ProgramLine, 'dose'>[]): number =>
  Math.round(lines.reduce((sum, { dose }) => sum + dayMinutes(dose), 0));

/** A changed number of minutes. */
export const withMinutes = (dose: Dose, minutes: number, timesPerDay: number): Dose => ({
  ...dose,
  minutes,
  timesPerDay,
});

/** Sentences that print with an item for this client; `hand` sentences go with everything that takes minutes. */
function cautionsFor(item: LibraryItem, facts: Facts, rules: RuleTable): RuleTable['cautionTexts'] {
  const own = item.cautions.flatMap((code) => cautionsNamed(code, rules));
  const ofHand = countedKinds.has(item.kind) ? cautionsOn('hand', rules) : [];
  const holds = [...own, ...ofHand].filter((row) => row.when === null || meets(row.when, facts) !== null);
  return holds.filter((row, i) => holds.findIndex(({ text }) => text === row.text) === i);
}

/** The item's words with the client's own letters in place of `{letters}`, the own words in place of `{words}`. */
export function wordsOf(item: LibraryItem | WordedItem, facts: Facts) {
  const version = 'version' in item ? item.version : null;
  const holding = item.versions.find(({ code }) => code === version)?.when;
  const named = (holding && meets(holding, facts)) ?? [];
  const words = facts.occasions.get(item.occasion ?? '') ?? named.flatMap((code) => facts.cautionWords.get(code) ?? []);
  // A version of the same name says it already.
  const additions = item.additions.filter(
    ({ code, when, text }) =>
      code !== version && meets(when, facts) !== null && (words.length > 0 || !text.includes('{words}')),
  );
  return {
    text: filled(
      [item.text, ...additions.map(({ text }) => text)].join(' '),
      { letters: facts.lettersMisread, words },
      lettersOnSheet,
    ),
    keys: [textKey(item.code, version), ...additions.map(({ code }) => additionKey(item.code, code))],
    letters: [...facts.lettersMisread],
    words: [...words],
  };
}

/** @param reasons rules that brought it in, first one first; empty = added from the library by hand */
export function lineOf(
  item: LibraryItem | WordedItem,
  reasons: readonly LineReason[],
  facts: Facts,
  rules: RuleTable,
): ProgramLine {
  const first = reasons[0]?.rule;
  const own = byCode(rules.doses).get(first?.dose ?? item.dose)?.dose;
  const base: Dose = own ?? {
    minutes: null,
    sets: null,
    reps: null,
    lines: null,
    restMinutes: null,
    timesPerDay: null,
    daysPerWeek: null,
    form: 'condition',
    how: '',
    text: '',
  };
  const tier = item.onTier === 'program' ? (Math.min(4, Math.max(2, facts.tier)) as Tier) : item.tier;
  const join = (parts: readonly string[], most: number): string => [...new Set(parts)].join(' ').slice(0, most);
  const { text, keys, letters, words: ownWords } = wordsOf(item, facts);
  const cautions = cautionsFor(item, facts, rules);
  const words = toldEnglish.draft;
  const until = !first
    ? ''
    : first.stepBack === ''
      ? words.up(first.advance)
      : words.upAndBack(first.advance, first.stepBack);
  return {
    id: lineId(item.code),
    item: item.code,
    kind: item.kind,
    tier,
    title: item.title,
    text,
    version: 'version' in item ? item.version : null,
    keys: { text: keys, letters, words: ownWords, cautions: cautions.map(({ code }) => code) },
    dose: base,
    rule: first?.id ?? null,
    findings: [...new Set(reasons.flatMap((each) => each.uses))],
    source: first?.source ?? item.source,
    sourceNote: join(
      [first?.sourceNote ?? '', item.sourceNote].filter((each) => each !== ''),
      400,
    ),
    cautions: cautions.map((row) => row.text),
    because: first
      ? join(
          reasons.map((each) => each.rule.because),
          600,
        )
      : words.fromLibrary,
    until: until.slice(0, 400),
    edited: false,
    override: null,
  };
}

/** Whether a rule gives the day's main writing. */
export const isMain = (rule: Rule): boolean => rule.role === 'main-writing';
