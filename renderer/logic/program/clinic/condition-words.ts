/** A condition of the rule table in plain words, for the screen and the exported list. */
import type { Condition } from '../../../../db/types/conditions.ts';
import type { RuleTable } from '../../../../db/types/rules.ts';
import type { Telling } from '../../texts/screens/telling.ts';
import { nameOf } from './finding-rows.ts';

/**
 * @param rules with its names in the language of the words
 * @returns for example "Tone in wrist, fingers, elbow is 1 or less, and a helper is there during practice"
 */
export function conditionWords(condition: Condition, rules: RuleTable, telling: Telling): string {
  const { ruleWords: words, ladder } = telling.told;
  const name = (code: string): string => nameOf(code, rules, ladder);
  const limit = (code: string): string => {
    const row = rules.thresholds.find((each) => each.code === code);
    return row
      ? `${telling.decimals(row.value, 6, 0)} ${row.unit === '1' ? '' : (words.units[row.unit] ?? row.unit)}`.trim()
      : code;
  };
  const said = (part: Condition): string => conditionWords(part, rules, telling);
  const inner = (part: Condition): string => ('any' in part && part.any.length > 1 ? `(${said(part)})` : said(part));
  if ('all' in condition) return words.allOf(...condition.all.map(inner));
  if ('any' in condition) return words.anyOf(...condition.any.map(said));
  if ('not' in condition) return words.not(inner(condition.not));
  if ('unless' in condition) return words.notSeen(inner(condition.unless));
  if ('otherHand' in condition) return words.otherHand(name(condition.otherHand));
  if ('otherFinding' in condition) return words.otherHand(words.atMost(name(condition.otherFinding), condition.atMost));
  if ('occasion' in condition) return words.wants(name(condition.occasion));
  if ('anyOccasion' in condition) return words.anyOccasion(condition.anyOccasion);
  if ('pageSide' in condition) return words.pageSide[condition.pageSide];
  if ('finding' in condition)
    return 'atMost' in condition
      ? words.atMost(name(condition.finding), condition.atMost)
      : words.atLeast(name(condition.finding), condition.atLeast);
  if ('untested' in condition) return words.untested(name(condition.untested));
  if ('detail' in condition) {
    const row = rules.vocabulary.findings.find((each) => each.code === condition.detail);
    const details = condition.is.map((code) => row?.details.find((each) => each.code === code)?.name ?? code);
    return `${name(condition.detail)}: ${words.orList(...details)}`;
  }
  if ('measure' in condition)
    return 'below' in condition
      ? words.under(name(condition.measure), limit(condition.below))
      : 'above' in condition
        ? words.over(name(condition.measure), limit(condition.above))
        : words.from(name(condition.measure), limit(condition.from));
  if ('ratio' in condition)
    return words.timesOf(name(condition.ratio[0]), limit(condition.below), name(condition.ratio[1]));
  if ('caution' in condition) return name(condition.caution);
  if ('flag' in condition)
    return words.flagSeen(rules.redFlags.find(({ code }) => code === condition.flag)?.title ?? condition.flag);
  if ('diagnosis' in condition) return name(condition.diagnosis);
  if ('anyDiagnosis' in condition) return words.anyDiagnosis(condition.anyDiagnosis);
  if ('hand' in condition) return words.hand[condition.hand];
  if ('tier' in condition) return words.tier(words.orList(...condition.tier));
  return words.penHeld(condition.penHeld);
}
