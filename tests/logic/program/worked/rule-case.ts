/** A worked clinical case of one rule, as its file has it, turned into what a draft is composed from. */
import { z } from 'zod';
import { ProgramInput } from '../../../../db/types/program-input.ts';
import type { RuleTable } from '../../../../db/types/rules.ts';

const Grade = z.union([z.literal(0), z.literal(1), z.literal(2), z.literal(3), z.null()]);

/** Facts that differ from a right-handed client with every item tested and fine, fatigue rise of 1. */
export const CaseFacts = z.strictObject({
  hand: z.enum(['left', 'right']).optional(),
  grades: z.record(z.string(), Grade).optional(),
  details: z.record(z.string(), z.string()).optional(),
  sides: z.record(z.string(), z.enum(['left', 'right'])).optional(),
  cautions: z.array(z.string()).optional(),
  otherHand: z.array(z.string()).optional(),
  diagnoses: z.array(z.string()).optional(),
  measures: z.record(z.string(), z.number()).optional(),
  occasions: z.array(z.string()).optional(),
  confusions: z.array(z.tuple([z.string(), z.string(), z.number()])).optional(),
  /** Flags that were reviewed. */
  redFlags: z.array(z.string()).optional(),
});
export type CaseFacts = z.infer<typeof CaseFacts>;

export const RuleCase = z.strictObject({
  /** Where in the clinical notes it is written. */
  source: z.string().min(3),
  facts: CaseFacts,
  gives: z.array(z.string()).min(1),
  dose: z
    .strictObject({
      item: z.string(),
      minutes: z.number().optional(),
      minutesMost: z.number().optional(),
      turns: z.number().optional(),
      rest: z.number().optional(),
      tier: z.number().optional(),
    })
    .nullable(),
  absent: z.array(z.string()),
  /** Words that the line has to say. */
  says: z.string().optional(),
  /** One fact changed, and the line is gone. */
  near: z.strictObject({
    changed: z.string().min(3),
    facts: CaseFacts,
    /** The rule still asks for it, and safety takes it out. */
    byVeto: z.boolean().optional(),
  }),
  more: z.array(z.strictObject({ why: z.string(), facts: CaseFacts, fires: z.boolean() })).optional(),
});
export type RuleCase = z.infer<typeof RuleCase>;

/** Items that no client is asked without an indication of their own: 3 would say something here. */
const notAsked = new Set(['spelling', 'pen-use', 'motor-letters']);

export function inputOf(facts: CaseFacts, rules: RuleTable): ProgramInput {
  const hand = facts.hand ?? 'right';
  const items = rules.vocabulary.findings.filter((each) => each.from === 'item' && !notAsked.has(each.code));
  const grades = { ...Object.fromEntries(items.map(({ code }) => [code, 3])), ...facts.grades };
  const units = new Map(rules.vocabulary.measures.map((each) => [each.code, each.units[0] ?? '']));
  const other = hand === 'right' ? 'left' : 'right';
  return ProgramInput.parse({
    version: 1,
    hand,
    findings: Object.entries(grades).map(([code, grade]) => ({
      code,
      grade,
      side: facts.sides?.[code] ?? hand,
      source: 'case',
      detail: facts.details?.[code] ?? null,
    })),
    redFlags: (facts.redFlags ?? []).map((code) => ({ code, reviewed: true })),
    cautions: [...(facts.cautions ?? []), ...(facts.otherHand ?? []).map((code) => ({ code, side: other }))],
    diagnoses: facts.diagnoses ?? [],
    occasions: (facts.occasions ?? []).map((code) => ({ code, words: ['oat milk'] })),
    measures: Object.entries({ 'fatigue-rise': 1, ...facts.measures }).map(([code, value]) => ({
      code,
      value,
      unit: units.get(code) ?? '',
    })),
    confusions: (facts.confusions ?? []).map(([intended, read, count]) => ({ intended, read, count })),
  });
}
