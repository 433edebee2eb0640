import type { ProgramInput } from '../../../../db/types/program-input.ts';
import type { LibraryItem, Rule, RuleTable } from '../../../../db/types/rules.ts';
import { byCode } from '../../../../db/types/rule-table/once-for.ts';
import { cautionsOn } from './caution-rows.ts';
import { chooseContent, choosePaper } from './choose.ts';
import { meets } from '../facts/condition-holds.ts';
import { itemFor } from '../../rules/item-ref.ts';
import type { Facts } from '../facts/fact-types.ts';
import { factsOf, isGood } from '../facts/program-facts.ts';
import { tierOf } from './tier.ts';
import type { Proposal } from './proposal-types.ts';

/** Items that rules ask for, in the order of the table, each once with all its reasons. */
export function proposals(input: ProgramInput, facts: Facts, rules: RuleTable): Proposal[] {
  const items = byCode(rules.items);
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
export function firedRules(input: ProgramInput, rules: RuleTable): { rule: Rule; uses: readonly string[] }[] {
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
  return cautionsOn('page', rules).filter((row) => row.when !== null && meets(row.when, facts) !== null);
}

/** Sentences that go with the whole page, for this client; those of practice only where there is some. */
export const pageOf = (facts: Facts, rules: RuleTable, practice: boolean): string[] =>
  cautionsOn('page', rules)
    .filter((row) => practice || !row.ofPractice)
    .filter((row) => row.when === null || meets(row.when, facts) !== null)
    .map((row) => row.text);
