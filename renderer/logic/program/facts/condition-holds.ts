/** Whether a condition of the rule table holds for a client, and because of which facts. */
import type { Condition } from '../../../../db/types/conditions.ts';
import type { Facts } from './fact-types.ts';

/**
 * Codes of the facts that make the condition true (perhaps none), or null when it does not hold.
 * An untested finding meets neither `atMost` nor `atLeast`; `not` says nothing about being tested.
 */
export function meets(condition: Condition, facts: Facts): string[] | null {
  if ('all' in condition) {
    const parts = condition.all.map((each) => meets(each, facts));
    return parts.every((part) => part !== null) ? unique(parts.flat()) : null;
  }
  if ('any' in condition) {
    const parts = condition.any.map((each) => meets(each, facts)).filter((part) => part !== null);
    return parts.length > 0 ? unique(parts.flat()) : null;
  }
  if ('not' in condition) return meets(condition.not, facts) === null ? [] : null;
  return atom(condition, facts);
}

type Atom = Exclude<Condition, { all: Condition[] } | { any: Condition[] } | { not: Condition }>;

function atom(condition: Atom, facts: Facts): string[] | null {
  const when = (holds: boolean, ...codes: string[]): string[] | null => (holds ? codes : null);
  if ('finding' in condition) {
    const found = facts.findings.get(condition.finding);
    if (!found || found.grade === null) return null;
    if ('atMost' in condition) return when(found.grade <= condition.atMost, condition.finding);
    return when(found.tested && found.grade >= condition.atLeast, condition.finding);
  }
  if ('untested' in condition) {
    return when(!(facts.findings.get(condition.untested)?.tested ?? false), condition.untested);
  }
  if ('detail' in condition) {
    const own = facts.details.get(condition.detail);
    return when(
      condition.is.some((each) => own?.has(each)),
      condition.detail,
    );
  }
  if ('measure' in condition)
    return compare(facts.measures.get(condition.measure), condition, facts, condition.measure);
  if ('ratio' in condition) {
    const [first, second] = condition.ratio.map((code) => facts.measures.get(code));
    const share = first === undefined || second === undefined || second === 0 ? undefined : first / second;
    return compare(share, condition, facts, condition.ratio[0]);
  }
  if ('caution' in condition) return when(facts.cautions.has(condition.caution), condition.caution);
  if ('diagnosis' in condition) return when(facts.diagnoses.has(condition.diagnosis), condition.diagnosis);
  if ('anyDiagnosis' in condition) return when(facts.diagnoses.size > 0 === condition.anyDiagnosis);
  if ('hand' in condition) return when(facts.hand === condition.hand, `${condition.hand}-hand`);
  if ('tier' in condition) return when(condition.tier.includes(facts.tier));
  return when(facts.penHeld === condition.penHeld);
}

function compare(
  value: number | undefined,
  limits: { below: string } | { above: string },
  facts: Facts,
  code: string,
): string[] | null {
  const limit = facts.thresholds.get('below' in limits ? limits.below : limits.above);
  if (value === undefined || limit === undefined) return null;
  return ('below' in limits ? value < limit : value > limit) ? [code] : null;
}

const unique = (codes: (string | null)[]): string[] => [...new Set(codes.filter((code) => code !== null))];
