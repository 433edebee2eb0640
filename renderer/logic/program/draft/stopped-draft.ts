import type { ProgramInput } from '../../../../db/types/program-input.ts';
import type { LineKind, ProgramLine, Tier, Vetoed } from '../../../../db/types/program.ts';
import type { RuleTable } from '../../../../db/types/rules.ts';
import { withoutClashes } from './clashes.ts';
import type { Facts } from '../facts/fact-types.ts';
import { lineOf } from './program-line.ts';
import { type OpenFlag } from './stop.ts';
import { activeVetoes } from './vetoes.ts';
import { proposals, pageOf } from './asked-by-rules.ts';
import { toldEnglish } from '../../texts/screens/told-english.ts';

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

export function stoppedDraft(flags: OpenFlag[], input: ProgramInput, facts: Facts, rules: RuleTable): Composition {
  const emergency = flags.some((flag) => flag.grade === 'emergency');
  const refer = rules.items.find((each) => each.code === 'refer-page');
  const active = activeVetoes(facts, rules);
  const may = withoutClashes(proposals(input, facts, rules), facts, rules, active).given.filter(
    ({ item }) => item.kind === 'setup' || item.kind === 'refer' || item.code === 'other-ways',
  );
  const lines = may.map(({ item, reasons }) => lineOf(item, reasons, facts, rules));
  const otherWays = rules.items.find((each) => each.code === 'other-ways');
  if (otherWays && flags[0] && !lines.some((line) => line.item === otherWays.code)) {
    const line = lineOf(otherWays, [], facts, rules);
    lines.push({ ...line, rule: stopRule, because: toldEnglish.draft.noExercise });
  }
  if (refer && flags[0]) {
    const line = lineOf(refer, [], facts, rules);
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
    page: emergency ? [...new Set(flags.flatMap((flag) => flag.doNow))] : pageOf(facts, rules, false),
  };
}

export const inOrder = (lines: ProgramLine[]): ProgramLine[] =>
  [...lines].sort((a, b) => order.indexOf(a.kind) - order.indexOf(b.kind));
