/** The rule table in use: shipped data merged with the clinic's own changes. */
import { z } from 'zod';
import { RulesInUse } from '../../db/types/rules-in-use.ts';
import { ClinicRules } from '../../db/types/rules.ts';
import { nothing, read, write } from './request.ts';

/** Rules of a table of format 1 that give writing: whether each is the day's main writing is asked once. */
const asks = z.array(z.string());

const RulesNow = z.object({ rules: RulesInUse, changes: ClinicRules.nullable(), asks });
/** The rules in use, and what of them is the clinic's own. */
export type RulesNow = z.infer<typeof RulesNow>;

export const rulesRequests = {
  'rules.current': read(nothing, RulesNow),
  /** Reads a colleague's rule file against the shipped table; refused whole, with line and reason. Nothing is changed. */
  'rules.readFile': read(
    z.object({ text: z.string().max(2_000_000) }).strict(),
    z.object({
      changes: ClinicRules.nullable(),
      asks,
      problems: z.array(z.object({ line: z.number().int(), reason: z.string() })),
    }),
  ),
  /** How many drafts of the caseload would come out differently with these changes, and whose. Nothing is changed. */
  'rules.try': read(
    z.object({ changes: ClinicRules.nullable() }).strict(),
    z.object({ changed: z.number().int(), of: z.number().int(), clients: z.array(z.string()) }),
  ),
  /** Replaces the clinic's changes; null restores the shipped table. Refused with the reason when it does not fit. */
  'rules.saveChanges': write(z.object({ changes: z.json().nullable() }).strict(), RulesNow),
} as const;
