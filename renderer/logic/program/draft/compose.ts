/**
 * Drafts a home program: red flags, then vetoes, then the rules; lower tier first; within the day's limits.
 * Pure and deterministic: the same facts and table give the same draft. It proposes; the therapist decides.
 */
import type { ProgramInput } from '../../../../db/types/program-input.ts';
import type { LineKind, ProgramLine, Tier, Vetoed } from '../../../../db/types/program.ts';
import type { LibraryItem, Rule, RuleTable } from '../../../../db/types/rules.ts';
import { chooseContent, choosePaper } from './choose.ts';
import { meets } from '../facts/condition-holds.ts';
import { itemFor } from '../../rules/item-ref.ts';
import { threshold } from '../../../../db/types/rule-table/threshold.ts';
import { withoutClashes } from './clashes.ts';
import { dayDose } from './day-dose.ts';
import type { Facts } from '../facts/fact-types.ts';
import { factsOf, isGood } from '../facts/program-facts.ts';
import { type Candidate, fitDay } from './fit-day.ts';
import { countedKinds, isMain, lineOf } from './program-line.ts';
import { type OpenFlag, openFlagsOf } from './stop.ts';
import { tierOf } from './tier.ts';
import type { Proposal } from './proposal-types.ts';
import { activeVetoes, notTestedRule } from './vetoes.ts';

export interface Composition {
  ruleVersion: string;
  /** A red flag is open: no exercise lines. */
  stopped: boolean;
  /** Emergency: no lines at all. Same day: set-up, other ways to write and the referral may stay. */
  stop: { level: OpenFlag['grade']; flags: OpenFlag[] } | null;
  tier: Tier;
  lines: ProgramLine[];
  /** What a rule asked for and safety forbade, with each reason. */
  vetoed: Vetoed[];
  /** What would be next, had the day more room. */
  leftOut: Vetoed[];
  /** Sentences for the whole page: emergency, stop and cautions of this client. */
  page: string[];
}

/** Id of the rule that a red flag stops the program by. */
const stopRule = 'R01';

const order: readonly LineKind[] = [
  'setup',
  'tool',
  'warm-up',
  'exercise',
  'writing',
  'paper',
  'content',
  'advice',
  'refer',
];

/** Items that rules ask for, in the order of the table, each once with all its reasons. */
function proposals(input: ProgramInput, facts: Facts, rules: RuleTable): Proposal[] {
  const items = new Map(rules.items.map((each) => [each.code, each]));
  const mayDictate = isGood(facts, 'language', 2);
  // Paper and text are chosen by size, tier, interest and language; every other item is named by its rule.
  const chosen: Record<string, () => LibraryItem | undefined> = {
    paper: () => standsFor('paper', choosePaper(input, facts, rules)?.code, rules),
    content: () => standsFor('content', chooseContent(input, facts, rules, mayDictate)?.code, rules),
  };
  const found = new Map<string, Proposal>();
  rules.rules.forEach((rule, at) => {
    const uses = meets(rule.when, facts);
    if (uses === null) return;
    for (const code of rule.gives) {
      const item = chosen[code]?.() ?? items.get(code);
      if (!item) continue;
      const known = found.get(item.code);
      if (known) known.reasons.push({ rule, uses });
      else found.set(item.code, { item, reasons: [{ rule, uses }], at });
    }
  });
  return [...found.values()];
}

const standsFor = (kind: 'paper' | 'content', code: string | undefined, rules: RuleTable): LibraryItem | undefined =>
  code === undefined ? undefined : itemFor({ kind, code }, rules);

/** Rules that hold for the client, with the facts behind them. */
export function firedRules(input: ProgramInput, rules: RuleTable): { rule: Rule; uses: string[] }[] {
  const facts = factsOf(input, rules);
  facts.tier = tierOf(input, facts);
  return rules.rules.flatMap((rule) => {
    const uses = meets(rule.when, facts);
    return uses === null ? [] : [{ rule, uses }];
  });
}

/** Cautions of the whole page that hold for this client and not for everybody. */
export function ownPageCautions(input: ProgramInput, rules: RuleTable): RuleTable['cautionTexts'] {
  const facts = factsOf(input, rules);
  return rules.cautionTexts.filter((row) => row.on === 'page' && row.when !== null && meets(row.when, facts) !== null);
}

/** Sentences that go with the whole page, for this client. */
const pageOf = (facts: Facts, rules: RuleTable): string[] =>
  rules.cautionTexts
    .filter((row) => row.on === 'page' && (row.when === null || meets(row.when, facts) !== null))
    .map((row) => row.text);

function stoppedDraft(flags: OpenFlag[], input: ProgramInput, facts: Facts, rules: RuleTable): Composition {
  const emergency = flags.some((flag) => flag.grade === 'emergency');
  const refer = rules.items.find((each) => each.code === 'refer-page');
  const active = activeVetoes(facts, rules);
  const may = withoutClashes(proposals(input, facts, rules), facts, rules, active).given.filter(
    ({ item }) => item.kind === 'setup' || item.kind === 'refer' || item.code === 'other-ways',
  );
  const lines = may.map(({ item, reasons }) => lineOf(item, reasons, input, facts, rules));
  const otherWays = rules.items.find((each) => each.code === 'other-ways');
  if (otherWays && flags[0] && !lines.some((line) => line.item === otherWays.code)) {
    const line = lineOf(otherWays, [], input, facts, rules);
    lines.push({ ...line, rule: stopRule, because: 'No exercise for now: words get on paper in other ways.' });
  }
  if (refer && flags[0]) {
    const line = lineOf(refer, [], input, facts, rules);
    lines.push({
      ...line,
      rule: stopRule,
      findings: flags.map((flag) => flag.code),
      because: `${flags[0].title}. ${flags[0].because}`,
    });
  }
  return {
    ruleVersion: rules.version,
    stopped: true,
    stop: { level: emergency ? 'emergency' : 'same-day', flags },
    tier: 0,
    lines: emergency ? [] : inOrder(lines),
    vetoed: flags.map((flag) => ({ item: 'program', rule: stopRule, because: `${flag.title}. ${flag.because}` })),
    leftOut: [],
    page: emergency ? [...new Set(flags.flatMap((flag) => flag.doNow))] : pageOf(facts, rules),
  };
}

const inOrder = (lines: ProgramLine[]): ProgramLine[] =>
  [...lines].sort((a, b) => order.indexOf(a.kind) - order.indexOf(b.kind));

/** Grade of a finding; what the client wants to write weighs as much as a marked finding. */
const weightOf = (code: string, facts: Facts, wishes: ReadonlySet<string>): number => {
  if (wishes.has(code)) return 1;
  const found = facts.findings.get(code);
  return found?.state === 'graded' ? found.grade : 3;
};

const tooHigh = 'Above the tier of the program by more than one.';
const inItsPlace = 'All that is written has its own place: no ruled paper is needed.';

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
      because: 'Not tested is not safe: the pen grasp comes first.',
    });
    return false;
  });

  const wishes = new Set([
    ...facts.occasions.keys(),
    ...rules.vocabulary.cautions.flatMap((each) => (each.wish ? [each.code] : [])),
  ]);
  const lines = allowed.map(({ item, reasons, at }) => ({
    line: lineOf(item, reasons, input, facts, rules),
    main: reasons.some(({ rule }) => isMain(rule)),
    manner: reasons.every(({ rule }) => rule.role === 'manner'),
    opening: item.opening,
    worst: Math.min(3, ...reasons.flatMap(({ uses }) => uses.map((code) => weightOf(code, facts, wishes)))),
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
  const beside = lines.filter(({ line, manner }) => !countedKinds.has(line.kind) && (writing.length > 0 || !manner));
  const ownPlace = new Set(rules.items.flatMap((item) => (item.ownPlace ? [item.code] : [])));
  const needsPaper = writing.length === 0 || writing.some(({ line }) => !ownPlace.has(line.item ?? ''));
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
    page: pageOf(facts, rules),
  };
}
