/** An item in the words that fit this client: the first version that holds and that no veto forbids. */
import type { Vetoed } from '../../../../db/types/program.ts';
import type { LibraryItem, RuleTable } from '../../../../db/types/rules.ts';
import { meets } from '../facts/condition-holds.ts';
import type { Facts } from '../facts/fact-types.ts';
import type { WordedItem } from './proposal-types.ts';
import { type ActiveVeto, vetoesOf } from './vetoes.ts';

export interface Fitting {
  /** The item as it may be given, or null. */
  item: WordedItem | null;
  /** Why not. */
  vetoes: Vetoed[];
}

/** Items without versions are given as they are. Where no version holds there is nothing to say, and no veto either. */
export function fittingVersion(
  item: LibraryItem,
  facts: Facts,
  rules: RuleTable,
  active: readonly ActiveVeto[],
): Fitting {
  if (item.versions.length === 0) {
    const vetoes = vetoesOf(item, facts, rules, active);
    return { item: vetoes.length === 0 ? { ...item, version: null } : null, vetoes };
  }
  let first: Vetoed[] = [];
  for (const version of item.versions) {
    if (meets(version.when, facts) === null) continue;
    const worded: WordedItem = {
      ...item,
      version: version.code,
      text: version.text,
      hazards: [...item.hazards, ...version.hazards],
      cautions: [...item.cautions, ...version.cautions],
    };
    const vetoes = vetoesOf(worded, facts, rules, active);
    if (vetoes.length === 0) return { item: worded, vetoes };
    if (first.length === 0) first = vetoes;
  }
  return { item: null, vetoes: first };
}
