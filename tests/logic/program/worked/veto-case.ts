/** Worked cases of the vetoes: what is barred for whom, by hazard, kind or item, and when it is not. */
import { z } from 'zod';
import type { LibraryItem, RuleTable } from '../../../../db/types/rules.ts';
import { activeVetoes, vetoesOf } from '../../../../renderer/logic/program/draft/vetoes.ts';
import { factsOf } from '../../../../renderer/logic/program/facts/program-facts.ts';
import { CaseFacts, inputOf } from './rule-case.ts';

export const VetoCase = z.strictObject({
  id: z.string(),
  source: z.string().min(3),
  facts: CaseFacts,
  /** Hazards that are barred. */
  bars: z.array(z.string()),
  kinds: z.array(z.string()).optional(),
  items: z.array(z.string()).optional(),
  /** One fact changed, and the veto is silent. */
  near: CaseFacts,
  more: z.array(z.strictObject({ facts: CaseFacts, barred: z.boolean() })).optional(),
});
export type VetoCase = z.infer<typeof VetoCase>;

/** Sentences on everything wrong; empty = the case holds. */
export function wrongWithVeto(data: VetoCase, rules: RuleTable): string[] {
  const out: string[] = [];
  const bars = (facts: CaseFacts, change: Partial<LibraryItem>): boolean => {
    const item = {
      ...rules.items[0]!,
      code: 'own-line',
      kind: 'advice',
      hazards: [],
      dependsOn: [],
      ...change,
    } as LibraryItem;
    return vetoesOf(item, factsOf(inputOf(facts, rules), rules), rules).some((each) => each.rule === data.id);
  };
  const holds = (facts: CaseFacts): boolean =>
    activeVetoes(factsOf(inputOf(facts, rules), rules), rules).some(
      ({ veto, open }) => veto.id === data.id && open.length === 0,
    );
  for (const hazard of data.bars) {
    if (!bars(data.facts, { hazards: [hazard] as LibraryItem['hazards'] }))
      out.push(`${data.id} does not bar ${hazard}`);
  }
  for (const kind of data.kinds ?? []) {
    if (!bars(data.facts, { kind: kind as LibraryItem['kind'] })) out.push(`${data.id} does not bar ${kind}`);
  }
  for (const code of data.items ?? []) {
    if (!bars(data.facts, { code })) out.push(`${data.id} does not bar ${code}`);
  }
  if (holds(data.near)) out.push(`${data.id} holds in the near miss`);
  for (const { facts, barred } of data.more ?? []) {
    if (holds(facts) !== barred) out.push(`${data.id} ${barred ? 'is silent' : 'holds'}: ${JSON.stringify(facts)}`);
  }
  return out;
}
