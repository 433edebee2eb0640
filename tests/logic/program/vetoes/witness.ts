/** Makes a client for whom a condition of the rule table holds, or shows that there is none. */
import type { Condition } from '../../../../db/types/conditions.ts';
import type { ProgramInput } from '../../../../db/types/program-input.ts';
import type { RuleTable } from '../../../../db/types/rules.ts';
import { openFlagsOf } from '../../../../renderer/logic/program/draft/stop.ts';
import { factsOf } from '../../../../renderer/logic/program/facts/program-facts.ts';
import { client } from '../support.ts';

/** Ways to make a condition true: each way is a list of simple claims. */
type Claim = { holds: boolean; atom: Condition };

const ways = (condition: Condition, holds: boolean): Claim[][] => {
  if ('not' in condition) return ways(condition.not, !holds);
  if ('unless' in condition) return ways(condition.unless, !holds);
  const parts = 'all' in condition ? condition.all : 'any' in condition ? condition.any : null;
  if (parts === null) return [[{ holds, atom: condition }]];
  const together = 'all' in condition === holds;
  if (!together) return parts.flatMap((part) => ways(part, holds));
  return parts.reduce<Claim[][]>(
    (found, part) => found.flatMap((one) => ways(part, holds).map((other) => [...one, ...other])),
    [[]],
  );
};

/** Circumstances that allow most of the table; an item is out of reach only if its own rule shuts it out. */
const helpful = [
  'helper',
  'weight-bearing-cleared',
  'balance-checked',
  'hand-change-agreed',
  'referrer-order',
  'transfer-reviewed',
];

/** What puts a client on each tier. */
const onTier: Record<number, (grades: Record<string, number | null>) => ProgramInput['measures']> = {
  0: (grades) => ((grades['grasp'] = null), []),
  1: (grades) => ((grades['wrist'] ??= 1), []),
  2: () => [{ code: 'legibility', value: 60, unit: '%' }],
  3: () => [{ code: 'legibility', value: 80, unit: '%' }],
  4: () => [{ code: 'legibility', value: 95, unit: '%' }],
};

function build(claims: Claim[], tier: number | null, rules: RuleTable): ProgramInput | null {
  const range = new Map<string, [number, number]>();
  const grades: Record<string, number | null> = {};
  const details: Record<string, string> = { wrist: 'sixty-or-more' };
  const cautions = new Set(helpful);
  const diagnoses = new Set<string>();
  const occasions = new Set<string>();
  const otherHand = new Set<string>();
  const flags = new Set<string>();
  let hand: 'left' | 'right' = 'right';
  const kindOf = (code: string): string =>
    rules.vocabulary.diagnoses.find((each) => each.code === code || each.groups.includes(code))?.code ?? code;
  const narrow = (code: string, from: number, to: number): void => {
    const [low, high] = range.get(code) ?? [0, 3];
    range.set(code, [Math.max(low, from), Math.min(high, to)]);
  };
  for (const { holds, atom } of claims) {
    if ('finding' in atom) {
      if ('atMost' in atom) narrow(atom.finding, holds ? 0 : atom.atMost + 1, holds ? atom.atMost : 3);
      else narrow(atom.finding, holds ? atom.atLeast : 0, holds ? 3 : atom.atLeast - 1);
    } else if ('untested' in atom) {
      if (holds) grades[atom.untested] = null;
    } else if ('detail' in atom) {
      if (holds) details[atom.detail] = atom.is[0] ?? '';
      else if (atom.is.includes(details[atom.detail] ?? '')) delete details[atom.detail];
    } else if ('caution' in atom) {
      if (holds) cautions.add(atom.caution);
      else cautions.delete(atom.caution);
    } else if ('diagnosis' in atom && holds) diagnoses.add(kindOf(atom.diagnosis));
    else if ('flag' in atom && holds) flags.add(atom.flag);
    else if ('anyDiagnosis' in atom && atom.anyDiagnosis === holds) diagnoses.add('other');
    else if ('occasion' in atom && holds) occasions.add(atom.occasion);
    else if ('otherHand' in atom && holds) otherHand.add(atom.otherHand);
    else if ('hand' in atom) hand = holds ? atom.hand : atom.hand === 'left' ? 'right' : 'left';
    else if ('penHeld' in atom && atom.penHeld !== holds) grades['grasp'] = 0;
    else if ('measure' in atom || 'ratio' in atom) return null;
  }
  for (const [code, [low, high]] of range) {
    if (low > high) return null;
    grades[code] = high;
  }
  const measures = tier === null ? [] : (onTier[tier]?.(grades) ?? []);
  const made = client(grades as Parameters<typeof client>[0], {
    details,
    hand,
    cautions: [...cautions, ...[...otherHand].map((code) => ({ code, side: hand === 'right' ? 'left' : 'right' }))],
    occasions: [...occasions].map((code) => ({ code, words: ['oat milk'] })),
    diagnoses: [...diagnoses],
    measures,
  });
  // Flags that the grades raise are known and reviewed: the rule is on trial here, not the flag.
  const raised = openFlagsOf(made, factsOf(made, rules), rules).map(({ code }) => code);
  return { ...made, redFlags: [...new Set([...raised, ...flags])].map((code) => ({ code, reviewed: true })) };
}

/** Clients for whom `condition` holds (or does not), as far as simple claims can make one. */
export function witnesses(condition: Condition, holds: boolean, rules: RuleTable): ProgramInput[] {
  return ways(condition, holds).flatMap((claims) =>
    [null, 1, 2, 3, 4].flatMap((tier) => build(claims, tier, rules) ?? []),
  );
}
