/** Whether a condition of the rule table holds for a client: yes, no or unknown, and because of which facts. */
import type { Condition } from '../../../../db/types/conditions.ts';
import { threshold } from '../../../../db/types/rule-table/threshold.ts';
import type { Facts } from './fact-types.ts';

export interface Answer {
  is: 'yes' | 'no' | 'unknown';
  /** Codes of the facts that make it true; perhaps none. */
  uses: string[];
  /** Codes that were not tested or measured and leave it open. */
  open: string[];
}

const yes = (...uses: string[]): Answer => ({ is: 'yes', uses, open: [] });
const no: Answer = { is: 'no', uses: [], open: [] };
const unknown = (...open: string[]): Answer => ({ is: 'unknown', uses: [], open });
const when = (holds: boolean, ...uses: string[]): Answer => (holds ? yes(...uses) : no);
const unique = (codes: string[]): string[] => [...new Set(codes)];

/** What was not tested or measured answers unknown, and so does its `not`; only `unless` takes unknown for not seen. */
export function answer(condition: Condition, facts: Facts): Answer {
  if ('all' in condition) {
    const parts = condition.all.map((each) => answer(each, facts));
    if (parts.some((part) => part.is === 'no')) return no;
    const open = unique(parts.flatMap((part) => part.open));
    if (parts.some((part) => part.is === 'unknown')) return unknown(...open);
    return { is: 'yes', uses: unique(parts.flatMap((part) => part.uses)), open };
  }
  if ('any' in condition) {
    const parts = condition.any.map((each) => answer(each, facts));
    const holds = parts.filter((part) => part.is === 'yes');
    if (holds.length > 0) {
      return { is: 'yes', uses: unique(holds.flatMap((part) => part.uses)), open: holds.flatMap((part) => part.open) };
    }
    const open = parts.filter((part) => part.is === 'unknown');
    return open.length > 0 ? unknown(...unique(open.flatMap((part) => part.open))) : no;
  }
  if ('not' in condition) {
    const inner = answer(condition.not, facts);
    if (inner.is === 'unknown') return inner;
    return when(inner.is === 'no');
  }
  if ('unless' in condition) {
    const inner = answer(condition.unless, facts);
    return inner.is === 'yes' ? no : { is: 'yes', uses: [], open: inner.open };
  }
  return atom(condition, facts);
}

/** Facts that make the condition true, or null when it does not hold or is not known to hold. */
export function meets(condition: Condition, facts: Facts): string[] | null {
  const { is, uses } = answer(condition, facts);
  return is === 'yes' ? uses : null;
}

type Atom = Exclude<
  Condition,
  { all: Condition[] } | { any: Condition[] } | { not: Condition } | { unless: Condition }
>;

function atom(condition: Atom, facts: Facts): Answer {
  if ('finding' in condition) {
    const found = facts.findings.get(condition.finding);
    if (found?.state !== 'graded') return unknown(condition.finding);
    if ('atMost' in condition) {
      if (found.grade <= condition.atMost) return yes(condition.finding);
      return found.whole ? no : unknown(condition.finding);
    }
    if (found.grade < condition.atLeast) return no;
    return found.whole ? yes(condition.finding) : unknown(condition.finding);
  }
  if ('untested' in condition) {
    const found = facts.findings.get(condition.untested);
    return when(!(found?.state === 'graded' && found.whole), condition.untested);
  }
  if ('detail' in condition) {
    const own = facts.details.get(condition.detail);
    if (condition.is.some((each) => own?.has(each))) return yes(condition.detail);
    return facts.findings.get(condition.detail)?.state === 'graded' ? no : unknown(condition.detail);
  }
  if ('measure' in condition) {
    return compare(facts.measures.get(condition.measure), condition, facts, condition.measure);
  }
  if ('ratio' in condition) {
    const [first, second] = condition.ratio.map((code) => facts.measures.get(code));
    const share = first === undefined || second === undefined || second === 0 ? undefined : first / second;
    return compare(share, condition, facts, condition.ratio[0]);
  }
  if ('caution' in condition) return when(facts.cautions.has(condition.caution), condition.caution);
  if ('otherHand' in condition) return when(facts.otherHand.cautions.has(condition.otherHand), condition.otherHand);
  if ('otherFinding' in condition) {
    const grade = facts.otherHand.grades.get(condition.otherFinding);
    return grade === undefined ? unknown() : when(grade <= condition.atMost, condition.otherFinding);
  }
  if ('occasion' in condition) return when(facts.occasions.has(condition.occasion), condition.occasion);
  if ('anyOccasion' in condition) return when(facts.occasions.size > 0 === condition.anyOccasion);
  if ('pageSide' in condition) return when(facts.pageSide === condition.pageSide);
  if ('diagnosis' in condition) return when(facts.diagnoses.has(condition.diagnosis), condition.diagnosis);
  if ('anyDiagnosis' in condition) return when(facts.diagnoses.size > 0 === condition.anyDiagnosis);
  if ('hand' in condition) return when(facts.hand === condition.hand, `${condition.hand}-hand`);
  if ('tier' in condition) return when(condition.tier.includes(facts.tier));
  return facts.penHeld === null ? unknown('grasp') : when(facts.penHeld === condition.penHeld);
}

type Compared = { below: string } | { above: string } | { from: string };

function compare(value: number | undefined, limits: Compared, facts: Facts, code: string): Answer {
  if (value === undefined) return unknown(code);
  const limit = threshold(
    facts.thresholds,
    'below' in limits ? limits.below : 'above' in limits ? limits.above : limits.from,
  );
  return when('below' in limits ? value < limit : 'above' in limits ? value > limit : value >= limit, code);
}
