/** A condition of the rule table in plain words, for the screen and the exported list. */
import type { Condition } from '../../../../db/types/conditions.ts';
import type { RuleTable } from '../../../../db/types/rules.ts';
import { nameOf } from './finding-rows.ts';

/** @returns for example "Tone in wrist, fingers, elbow is 1 or less, and a helper is there during practice" */
export function conditionWords(condition: Condition, rules: RuleTable): string {
  const name = (code: string): string => nameOf(code, rules);
  const limit = (code: string): string => {
    const row = rules.thresholds.find((each) => each.code === code);
    return row ? `${row.value} ${row.unit === '1' ? '' : row.unit}`.trim() : code;
  };
  const inner = (part: Condition): string => {
    const words = conditionWords(part, rules);
    return 'any' in part && part.any.length > 1 ? `(${words})` : words;
  };
  if ('all' in condition) return condition.all.map(inner).join(', and ');
  if ('any' in condition) return condition.any.map((part) => conditionWords(part, rules)).join(', or ');
  if ('not' in condition) return `not: ${inner(condition.not)}`;
  if ('unless' in condition) return `not seen: ${inner(condition.unless)}`;
  if ('otherHand' in condition) return `other hand: ${name(condition.otherHand)}`;
  if ('otherFinding' in condition) return `other hand: ${name(condition.otherFinding)} is ${condition.atMost} or less`;
  if ('occasion' in condition) return `wants to write: ${name(condition.occasion)}`;
  if ('anyOccasion' in condition) return condition.anyOccasion ? 'any occasion was named' : 'no occasion was named';
  if ('pageSide' in condition)
    return condition.pageSide === 'none' ? 'side not noted' : `misses the ${condition.pageSide} side of the page`;
  if ('finding' in condition) {
    return 'atMost' in condition
      ? `${name(condition.finding)} is ${condition.atMost}${condition.atMost > 0 ? ' or less' : ''}`
      : `${name(condition.finding)} is ${condition.atLeast}${condition.atLeast < 3 ? ' or more' : ''}`;
  }
  if ('untested' in condition) return `${name(condition.untested)} was not tested`;
  if ('detail' in condition) {
    const row = rules.vocabulary.findings.find((each) => each.code === condition.detail);
    const details = condition.is.map((code) => row?.details.find((each) => each.code === code)?.name ?? code);
    return `${name(condition.detail)}: ${details.join(' or ')}`;
  }
  if ('measure' in condition) {
    return 'below' in condition
      ? `${name(condition.measure)} under ${limit(condition.below)}`
      : 'above' in condition
        ? `${name(condition.measure)} over ${limit(condition.above)}`
        : `${name(condition.measure)} from ${limit(condition.from)}`;
  }
  if ('ratio' in condition) {
    return `${name(condition.ratio[0])} under ${limit(condition.below)} times ${name(condition.ratio[1])}`;
  }
  if ('caution' in condition) return name(condition.caution);
  if ('diagnosis' in condition) return name(condition.diagnosis);
  if ('anyDiagnosis' in condition) return condition.anyDiagnosis ? 'any diagnosis' : 'no diagnosis';
  if ('hand' in condition) return `writes with the ${condition.hand} hand`;
  if ('tier' in condition) return `tier ${condition.tier.join(' or ')}`;
  return condition.penHeld ? 'a pen can be held' : 'no pen can be held';
}
