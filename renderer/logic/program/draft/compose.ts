/**
 * Drafts a home program: red flags, then vetoes, then the rules; lower tier first; within the day's limits.
 * Pure and deterministic: the same facts and table give the same draft. It proposes; the therapist decides.
 */
import type { ProgramInput } from '../../../../db/types/program-input.ts';
import type { LineKind, ProgramLine, Tier, Vetoed } from '../../../../db/types/program.ts';
import type { LibraryItem, Rule, RuleTable } from '../../../../db/types/rules.ts';
import { chooseContent, choosePaper } from './choose.ts';
import { meets } from '../facts/condition-holds.ts';
import { dayLimits } from './day.ts';
import { factsOf } from '../facts/program-facts.ts';
import type { Facts } from '../facts/fact-types.ts';
import { type Candidate, fitDay } from './fit-day.ts';
import { countedKinds, isMain, lineOf, type LineReason } from './program-line.ts';
import { type OpenFlag, openFlagsOf } from './stop.ts';
import { tierOf } from './tier.ts';
import { activeVetoes, notTestedRule, vetoesOf } from './vetoes.ts';

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
}

/** Id of the rule that a red flag stops the program by. */
export const stopRule = 'R01';

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

interface Proposal {
  item: LibraryItem;
  reasons: LineReason[];
  at: number;
}

/** Items that rules ask for, in the order of the table, each once with all its reasons. */
function proposals(input: ProgramInput, facts: Facts, rules: RuleTable): Proposal[] {
  const items = new Map(rules.items.map((each) => [each.code, each]));
  const mayDictate = (facts.findings.get('language')?.grade ?? 0) >= 2;
  // Paper and text are chosen by size, tier, interest and language; every other item is named by its rule.
  const chosen: Record<string, () => string | undefined> = {
    paper: () => withPrefix('paper', choosePaper(input, facts, rules)?.code),
    content: () => withPrefix('text', chooseContent(input, facts, rules, mayDictate)?.code),
  };
  const found = new Map<string, Proposal>();
  rules.rules.forEach((rule, at) => {
    const uses = meets(rule.when, facts);
    if (uses === null) return;
    for (const code of rule.gives) {
      const item = items.get(chosen[code]?.() ?? code);
      if (!item) continue;
      const known = found.get(item.code);
      if (known) known.reasons.push({ rule, uses });
      else found.set(item.code, { item, reasons: [{ rule, uses }], at });
    }
  });
  return [...found.values()];
}

const withPrefix = (prefix: string, code: string | undefined): string | undefined =>
  code === undefined ? undefined : `${prefix}-${code}`;

/** Rules that hold for the client, with the facts behind them. */
export function firedRules(input: ProgramInput, rules: RuleTable): { rule: Rule; uses: string[] }[] {
  const facts = { ...factsOf(input, rules) };
  facts.tier = tierOf(input, facts);
  return rules.rules.flatMap((rule) => {
    const uses = meets(rule.when, facts);
    return uses === null ? [] : [{ rule, uses }];
  });
}

function stoppedDraft(flags: OpenFlag[], input: ProgramInput, facts: Facts, rules: RuleTable): Composition {
  const emergency = flags.some((flag) => flag.grade === 'emergency');
  const refer = rules.items.find((each) => each.code === 'refer-page');
  const active = activeVetoes(facts, rules);
  const may = proposals(input, facts, rules).filter(
    ({ item }) =>
      (item.kind === 'setup' || item.kind === 'refer' || item.code === 'other-ways') &&
      vetoesOf(item, facts, rules, active).length === 0,
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
  };
}

const inOrder = (lines: ProgramLine[]): ProgramLine[] =>
  [...lines].sort((a, b) => order.indexOf(a.kind) - order.indexOf(b.kind));

/** Grade of a finding; what the client wants to write weighs as much as a marked finding. */
const weightOf = (code: string, facts: Facts): number =>
  code.startsWith('goal-') ? 1 : (facts.findings.get(code)?.grade ?? 3);

/** Rules W40 and after speak of how to write: without a line of writing they say nothing. */
const aboutWriting = (line: ProgramLine): boolean => line.rule?.startsWith('W') ?? false;

/**
 * @param input facts, as FINDINGS.json of the command line
 * @param rules the table in force
 */
export function compose(input: ProgramInput, rules: RuleTable): Composition {
  const facts = factsOf(input, rules);
  const flags = openFlagsOf(input, facts, rules);
  if (flags.length > 0) return stoppedDraft(flags, input, facts, rules);
  facts.tier = tierOf(input, facts);

  const vetoed: Vetoed[] = [];
  const active = activeVetoes(facts, rules);
  const allowed = proposals(input, facts, rules).filter(({ item }) => {
    const own = vetoesOf(item, facts, rules, active);
    if (own.length === 0 && facts.tier === 0 && countedKinds.has(item.kind)) {
      own.push({ item: item.code, rule: notTestedRule, because: 'Not tested is not safe: the pen grasp comes first.' });
    }
    vetoed.push(...own);
    return own.length === 0;
  });

  const lines = allowed.map(({ item, reasons, at }) => ({
    line: lineOf(item, reasons, input, facts, rules),
    main: reasons.some(({ rule }) => isMain(rule)),
    worst: Math.min(3, ...reasons.flatMap(({ uses }) => uses.map((code) => weightOf(code, facts)))),
    order: at,
  }));
  const counted: Candidate[] = lines.filter(({ line }) => countedKinds.has(line.kind));
  const limit = (code: string, other: number): number => facts.thresholds.get(code) ?? other;
  const fitted = fitDay(counted, facts.penHeld === true, {
    ...dayLimits(facts),
    writingShare: limit('writing-share', 0.5),
    warmUpShare: limit('warm-up-share', 0.2),
  });
  const writes = fitted.kept.some(({ line }) => line.kind === 'writing');
  const others = lines
    .map(({ line }) => line)
    .filter((line) => !countedKinds.has(line.kind) && (writes || !aboutWriting(line)));
  return {
    ruleVersion: rules.version,
    stopped: false,
    stop: null,
    tier: facts.tier,
    lines: inOrder([...fitted.kept.map(({ line }) => line), ...others]),
    vetoed,
    leftOut: fitted.leftOut.map(({ line, because }) => ({ item: line.item ?? '', rule: line.rule ?? '', because })),
  };
}
