/**
 * Conditions of rules, vetoes and cautions, as data. A condition speaks of findings, details of findings, measures,
 * cautions, red flags, diagnoses, the hand, the tier and whether a pen can be held; it is never prose.
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
  | { unless: Condition }
  | { finding: string; atMost: number }
  | { finding: string; atLeast: number }
  | { untested: string }
  | { detail: string; is: string[] }
  | { measure: string; below: string }
  | { measure: string; above: string }
  | { measure: string; from: string }
  | { ratio: [string, string]; below: string }
  | { caution: string }
  | { flag: string }
  | { otherHand: string }
  | { otherFinding: string; atMost: number }
  | { occasion: string }
  | { anyOccasion: boolean }
  | { pageSide: 'left' | 'right' | 'none' }
  | { diagnosis: string }
  | { anyDiagnosis: boolean }
  | { hand: 'left' | 'right' }
  | { tier: number[] }
  | { penHeld: boolean };

const GradeLimit = z.number().int().min(0).max(3);

/**
 * Every condition answers yes, no or unknown: what was not tested or measured is unknown, and so is its `not`.
 * `unless` is yes where the inner condition is not known to hold: for wishes and wording, never for safety.
 * `untested` holds for a finding that was not graded. `measure … below/above` compares strictly, `from` with the
 * limit included; `ratio` is first over second. `diagnosis` takes a kind or a group of kinds. `caution` speaks of the
 * hand that writes or of the whole body, `otherHand` and `otherFinding` of the hand that does not write. `flag` is a red
 * flag that was answered or raised; a rule meets it once it was reviewed, because an open one stops the program.
 */
export const Condition: z.ZodType<Condition> = z.lazy(() =>
  z.union([
    z.strictObject({ all: z.array(Condition).min(1) }),
    z.strictObject({ any: z.array(Condition).min(1) }),
    z.strictObject({ not: Condition }),
    z.strictObject({ unless: Condition }),
    z.strictObject({ finding: RuleCode, atMost: GradeLimit }),
    z.strictObject({ finding: RuleCode, atLeast: GradeLimit }),
    z.strictObject({ untested: RuleCode }),
    z.strictObject({ detail: RuleCode, is: z.array(RuleCode).min(1) }),
    z.strictObject({ measure: RuleCode, below: Limit }),
    z.strictObject({ measure: RuleCode, above: Limit }),
    z.strictObject({ measure: RuleCode, from: Limit }),
    z.strictObject({ ratio: z.tuple([RuleCode, RuleCode]), below: Limit }),
    z.strictObject({ caution: RuleCode }),
    z.strictObject({ flag: RuleCode }),
    z.strictObject({ otherHand: RuleCode }),
    z.strictObject({ otherFinding: RuleCode, atMost: GradeLimit }),
    z.strictObject({ occasion: RuleCode }),
    z.strictObject({ anyOccasion: z.boolean() }),
    z.strictObject({ pageSide: z.enum(['left', 'right', 'none']) }),
    z.strictObject({ diagnosis: RuleCode }),
    z.strictObject({ anyDiagnosis: z.boolean() }),
    z.strictObject({ hand: z.enum(['left', 'right']) }),
    z.strictObject({ tier: z.array(z.number().int().min(0).max(4)).min(1) }),
    z.strictObject({ penHeld: z.boolean() }),
  ]),
);
