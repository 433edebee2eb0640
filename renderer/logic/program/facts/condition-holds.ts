/** Whether a condition of the rule table holds for a client: yes, no or unknown, and because of which facts. */
import type { Condition } from '../../../../db/types/conditions.ts';
import { onceFor } from '../../../../db/types/rule-table/once-for.ts';
import { threshold } from '../../../../db/types/rule-table/threshold.ts';
import type { Facts } from './fact-types.ts';

export interface Answer {
  is: 'yes' | 'no' | 'unknown';
  /** Codes of the facts that make it true; perhaps none. */
  uses: readonly string[];
  /** Codes that were not tested or measured and leave it open. */
  open: readonly string[];
}

/** A condition made ready to be asked of one client after another. */
type Question = (facts: Facts) => Answer;

const question = onceFor(questionOf);

/** What was not tested or measured answers unknown, and so does its `not`; only `unless` takes unknown for not seen. */
export const answer = (condition: Condition, facts: Facts): Answer => question(condition)(facts);

/** Facts that make the condition true, or null when it does not hold or is not known to hold. */
export function meets(condition: Condition, facts: Facts): readonly string[] | null {
  const { is, uses } = answer(condition, facts);
  return is === 'yes' ? uses : null;
}

const yes = (...uses: string[]): Answer => ({ is: 'yes', uses, open: [] });
const no: Answer = { is: 'no', uses: [], open: [] };
const unknown = (...open: string[]): Answer => ({ is: 'unknown', uses: [], open });

/** The answer of several parts; their codes are gathered only when somebody asks for them. */
class Joined implements Answer {
  readonly is;
  readonly #parts;
  constructor(is: 'yes' | 'unknown', parts: readonly Answer[]) {
    this.is = is;
    this.#parts = parts;
  }
  get uses(): readonly string[] {
    return this.is === 'yes' ? [...new Set(this.#parts.flatMap((each) => each.uses))] : [];
  }
  get open(): readonly string[] {
    return [...new Set(this.#parts.flatMap((each) => each.open))];
  }
}

function questionOf(condition: Condition): Question {
  if ('all' in condition) return all(condition.all.map(questionOf));
  if ('any' in condition) return any(condition.any.map(questionOf));
  if ('not' in condition) {
    const inner = questionOf(condition.not);
    const holds = yes();
    return (facts) => {
      const found = inner(facts);
      return found.is === 'unknown' ? found : found.is === 'no' ? holds : no;
    };
  }
  if ('unless' in condition) {
    const inner = questionOf(condition.unless);
    return (facts) => {
      const { is, open } = inner(facts);
      return is === 'yes' ? no : { is: 'yes', uses: [], open };
    };
  }
  return atom(condition);
}

/** One no is enough; else one unknown leaves it open. */
function all(parts: readonly Question[]): Question {
  return (facts) => {
    const answers: Answer[] = [];
    let is: 'yes' | 'unknown' = 'yes';
    for (const part of parts) {
      const found = part(facts);
      if (found.is === 'no') return no;
      if (found.is === 'unknown') is = 'unknown';
      answers.push(found);
    }
    return new Joined(is, answers);
  };
}

/** One yes is enough, but every yes counts as a reason. */
function any(parts: readonly Question[]): Question {
  return (facts) => {
    const answers = parts.map((part) => part(facts));
    for (const is of ['yes', 'unknown'] as const) {
      const those = answers.filter((each) => each.is === is);
      if (those.length > 0) return new Joined(is, those);
    }
    return no;
  };
}

type Atom = Exclude<
  Condition,
  { all: Condition[] } | { any: Condition[] } | { not: Condition } | { unless: Condition }
>;

/** Yes with the code as its reason, or no. */
function whether(holds: (facts: Facts) => boolean, ...uses: string[]): Question {
  const found = yes(...uses);
  return (facts) => (holds(facts) ? found : no);
}

function atom(condition: Atom): Question {
  if ('finding' in condition) return ofFinding(condition);
  if ('untested' in condition) {
    return whether(({ findings }) => {
      const found = findings.get(condition.untested);
      return !(found?.state === 'graded' && found.whole);
    }, condition.untested);
  }
  if ('detail' in condition) {
    const [seen, open] = [yes(condition.detail), unknown(condition.detail)];
    return ({ details, findings }) => {
      const own = details.get(condition.detail);
      if (own && condition.is.some((each) => own.has(each))) return seen;
      return findings.get(condition.detail)?.state === 'graded' ? no : open;
    };
  }
  if ('measure' in condition) {
    return compared(({ measures }) => measures.get(condition.measure), condition, condition.measure);
  }
  if ('ratio' in condition) {
    const [over, under] = condition.ratio;
    const share = ({ measures }: Facts): number | undefined => {
      const [first, second] = [measures.get(over), measures.get(under)];
      return first === undefined || second === undefined || second === 0 ? undefined : first / second;
    };
    return compared(share, condition, over);
  }
  if ('caution' in condition) return whether((facts) => facts.cautions.has(condition.caution), condition.caution);
  if ('flag' in condition) return whether((facts) => facts.flags.has(condition.flag), condition.flag);
  if ('otherHand' in condition)
    return whether((facts) => facts.otherHand.cautions.has(condition.otherHand), condition.otherHand);
  if ('otherFinding' in condition) {
    const [low, open] = [yes(condition.otherFinding), unknown()];
    return ({ otherHand }) => {
      const grade = otherHand.grades.get(condition.otherFinding);
      return grade === undefined ? open : grade <= condition.atMost ? low : no;
    };
  }
  if ('occasion' in condition) return whether((facts) => facts.occasions.has(condition.occasion), condition.occasion);
  if ('anyOccasion' in condition) return whether((facts) => facts.occasions.size > 0 === condition.anyOccasion);
  if ('pageSide' in condition) return whether((facts) => facts.pageSide === condition.pageSide);
  if ('diagnosis' in condition)
    return whether((facts) => facts.diagnoses.has(condition.diagnosis), condition.diagnosis);
  if ('anyDiagnosis' in condition) return whether((facts) => facts.diagnoses.size > 0 === condition.anyDiagnosis);
  if ('hand' in condition) return whether((facts) => facts.hand === condition.hand, `${condition.hand}-hand`);
  if ('tier' in condition) return whether((facts) => condition.tier.includes(facts.tier));
  const [holds, open] = [yes(), unknown('grasp')];
  return ({ penHeld }) => (penHeld === null ? open : penHeld === condition.penHeld ? holds : no);
}

/** A finding of which a part was not tested is low where the tested part is, and never surely good. */
function ofFinding(condition: Extract<Atom, { finding: string }>): Question {
  const { finding } = condition;
  const [holds, open] = [yes(finding), unknown(finding)];
  if ('atMost' in condition) {
    return ({ findings }) => {
      const found = findings.get(finding);
      if (found?.state !== 'graded') return open;
      if (found.grade <= condition.atMost) return holds;
      return found.whole ? no : open;
    };
  }
  return ({ findings }) => {
    const found = findings.get(finding);
    if (found?.state !== 'graded') return open;
    if (found.grade < condition.atLeast) return no;
    return found.whole ? holds : open;
  };
}

type Compared = { below: string } | { above: string } | { from: string };

function compared(value: (facts: Facts) => number | undefined, limits: Compared, code: string): Question {
  const [holds, open] = [yes(code), unknown(code)];
  const row = 'below' in limits ? limits.below : 'above' in limits ? limits.above : limits.from;
  const meetsLimit =
    'below' in limits
      ? (at: number, limit: number) => at < limit
      : 'above' in limits
        ? (at: number, limit: number) => at > limit
        : (at: number, limit: number) => at >= limit;
  return (facts) => {
    const at = value(facts);
    if (at === undefined) return open;
    return meetsLimit(at, threshold(facts.thresholds, row)) ? holds : no;
  };
}
