/**
 * Drafts a home program: red flags, then vetoes, then the rules; lower tier first; within the day's limits.
 * Pure and deterministic: the same facts and table give the same draft. It proposes; the therapist decides.
 */
import type { ProgramInput } from '../../../../db/types/program-input.ts';
import type { RuleTable } from '../../../../db/types/rules.ts';
import { byCode } from '../../../../db/types/rule-table/once-for.ts';
import { threshold } from '../../../../db/types/rule-table/threshold.ts';
import { withoutClashes } from './clashes.ts';
import { dayDose } from './day-dose.ts';
import type { Facts } from '../facts/fact-types.ts';
import { factsOf } from '../facts/program-facts.ts';
import { type Candidate, fitDay } from './fit-day.ts';
import { countedKinds, isMain, lineOf } from './program-line.ts';
import { openFlagsOf } from './stop.ts';
import { tierOf } from './tier.ts';
import { activeVetoes, notTestedRule } from './vetoes.ts';
import { proposals, pageOf } from './asked-by-rules.ts';
import { stoppedDraft, inOrder } from './stopped-draft.ts';
import type { Composition } from './stopped-draft.ts';
import { toldEnglish } from '../../texts/screens/told-english.ts';

/** Grade of a finding; what the client wants to write weighs as much as a marked finding. */
const weightOf = (code: string, facts: Facts, rules: RuleTable): number => {
  if (facts.occasions.has(code) || byCode(rules.vocabulary.cautions).get(code)?.wish) return 1;
  const found = facts.findings.get(code);
  return found?.state === 'graded' ? found.grade : 3;
};

const tooHigh = toldEnglish.draft.tooHigh;
const inItsPlace = toldEnglish.draft.inItsPlace;

/**
 * @param input facts, as FINDINGS.json of the command line
 * @param rules the table in force
 */
export function compose(input: ProgramInput, rules: RuleTable): Composition {
  const facts = factsOf(input, rules);
  const flags = openFlagsOf(input, facts, rules);
  if (flags.length > 0) return stoppedDraft(flags, input, facts, rules);
  facts.tier = tierOf(input, facts);

  const active = activeVetoes(facts, rules);
  const { given, vetoed, clashing } = withoutClashes(proposals(input, facts, rules), facts, rules, active);
  const allowed = given.filter(({ item }) => {
    if (facts.tier > 0 || !countedKinds.has(item.kind)) return true;
    vetoed.push({
      item: item.code,
      rule: notTestedRule,
      because: toldEnglish.draft.graspFirst,
    });
    return false;
  });

  const lines = allowed.map(({ item, reasons, at }) => ({
    line: lineOf(item, reasons, facts, rules),
    main: reasons.some(({ rule }) => isMain(rule)),
    manner: reasons.every(({ rule }) => rule.role === 'manner'),
    penInHand: item.penInHand,
    holdsPen: item.holdsPen,
    opening: item.opening,
    worst: Math.min(3, ...reasons.flatMap(({ uses }) => uses.map((code) => weightOf(code, facts, rules)))),
    order: at,
  }));
  const counted = lines.filter(({ line }) => countedKinds.has(line.kind));
  const onTier: Candidate[] = counted.filter(({ line }) => line.tier <= facts.tier + 1);
  const limit = (code: string): number => threshold(facts.thresholds, code);
  const fitted = fitDay(onTier, facts.penHeld === true, dayDose(input, facts), {
    writingShare: limit('writing-share'),
    warmUpShare: limit('warm-up-share'),
  });
  const writing = fitted.kept.filter(({ line }) => line.kind === 'writing');
  const penAtWork = writing.length > 0 || facts.penHeld !== false || lines.some(({ holdsPen }) => holdsPen);
  const beside = lines.filter(
    ({ line, manner, penInHand }) =>
      !countedKinds.has(line.kind) && (writing.length > 0 || !manner) && (penAtWork || !penInHand),
  );
  const ownPlace = (code: string | null): boolean => byCode(rules.items).get(code ?? '')?.ownPlace === true;
  const needsPaper = writing.length === 0 || writing.some(({ line }) => !ownPlace(line.item));
  const others = beside.filter(({ line }) => needsPaper || line.kind !== 'paper');
  const unneeded = beside.flatMap((each) => (others.includes(each) ? [] : [{ line: each.line, because: inItsPlace }]));
  const high = counted.filter((each) => !onTier.includes(each)).map(({ line }) => ({ line, because: tooHigh }));
  return {
    ruleVersion: rules.version,
    stopped: false,
    stop: null,
    tier: facts.tier,
    lines: inOrder([...fitted.kept, ...others].map(({ line }) => line)),
    vetoed,
    leftOut: [
      ...[...fitted.leftOut, ...high, ...unneeded].map(({ line, because }) => ({
        item: line.item ?? '',
        rule: line.rule ?? '',
        because,
      })),
      ...clashing,
    ],
    page: pageOf(facts, rules, true),
  };
}
