/**
 * Conditions of rules, vetoes and cautions, as data. A condition speaks of findings, details of findings, measures,
 * cautions, diagnoses, the hand, the tier and whether a pen can be held; it is never prose.
 */
import { z } from 'zod';

export const RuleCode = z
  .string()
  .regex(/^[a-z0-9][a-z0-9-]*$/, 'a code is lower-case letters, digits and hyphens')
  .max(60);

/** Codes of the threshold table stand where a number would. */
const Limit = RuleCode;

export type Condition =
  | { all: Condition[] }
  | { any: Condition[] }
  | { not: Condition }
  | { finding: string; atMost: number }
  | { finding: string; atLeast: number }
  | { untested: string }
  | { detail: string; is: string[] }
  | { measure: string; below: string }
  | { measure: string; above: string }
  | { ratio: [string, string]; below: string }
  | { caution: string }
  | { diagnosis: string }
  | { anyDiagnosis: boolean }
  | { hand: 'left' | 'right' }
  | { tier: number[] }
  | { penHeld: boolean };

const GradeLimit = z.number().int().min(0).max(3);

/**
 * `finding … atMost/atLeast` holds only for a finding that was tested; `untested` for one that was not.
 * `measure … below/above` compares strictly, and only where the measure exists; `ratio` is first over second.
 * `diagnosis` takes a kind or a group of kinds.
 */
export const Condition: z.ZodType<Condition> = z.lazy(() =>
  z.union([
    z.strictObject({ all: z.array(Condition).min(1) }),
    z.strictObject({ any: z.array(Condition).min(1) }),
    z.strictObject({ not: Condition }),
    z.strictObject({ finding: RuleCode, atMost: GradeLimit }),
    z.strictObject({ finding: RuleCode, atLeast: GradeLimit }),
    z.strictObject({ untested: RuleCode }),
    z.strictObject({ detail: RuleCode, is: z.array(RuleCode).min(1) }),
    z.strictObject({ measure: RuleCode, below: Limit }),
    z.strictObject({ measure: RuleCode, above: Limit }),
    z.strictObject({ ratio: z.tuple([RuleCode, RuleCode]), below: Limit }),
    z.strictObject({ caution: RuleCode }),
    z.strictObject({ diagnosis: RuleCode }),
    z.strictObject({ anyDiagnosis: z.boolean() }),
    z.strictObject({ hand: z.enum(['left', 'right']) }),
    z.strictObject({ tier: z.array(z.number().int().min(0).max(4)).min(1) }),
    z.strictObject({ penHeld: z.boolean() }),
  ]),
);
