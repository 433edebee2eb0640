/** One page never says two things: of items that contradict each other, the first alternative of the table stays. */
import type { Vetoed } from '../../../../db/types/program.ts';
import type { RuleTable } from '../../../../db/types/rules.ts';
import type { Proposal } from './proposal-types.ts';
import type { Facts } from '../facts/fact-types.ts';
import { fittingVersion } from './versions.ts';
import type { ActiveVeto } from './vetoes.ts';
import { toldEnglish } from '../../texts/screens/told-english.ts';

export interface Sorted {
  given: Proposal[];
  vetoed: Vetoed[];
  /** What another line says already. */
  clashing: Vetoed[];
}

/** Vetoes first, then the groups: what is forbidden cannot push out what may be given. */
export function withoutClashes(
  proposals: readonly Proposal[],
  facts: Facts,
  rules: RuleTable,
  active: readonly ActiveVeto[],
): Sorted {
  const vetoed: Vetoed[] = [];
  const clashing: Vetoed[] = [];
  let given = proposals.flatMap((proposal): Proposal[] => {
    const { item, vetoes } = fittingVersion(proposal.item, facts, rules, active);
    vetoed.push(...vetoes.filter(() => item === null));
    return item ? [{ ...proposal, item }] : [];
  });
  for (const group of rules.clashes) {
    const there = new Set(given.map(({ item }) => item.code));
    const stays = group.alternatives.find((codes) => codes.some((code) => there.has(code)));
    if (!stays) continue;
    const goes = new Set(group.alternatives.filter((codes) => codes !== stays).flat());
    given
      .filter(({ item }) => goes.has(item.code))
      .forEach(({ item, reasons }) =>
        clashing.push({
          item: item.code,
          rule: reasons[0]?.rule.id ?? '',
          because: toldEnglish.draft.clash(group.name),
        }),
      );
    given = given.filter(({ item }) => !goes.has(item.code));
  }
  return { given, vetoed, clashing };
}
