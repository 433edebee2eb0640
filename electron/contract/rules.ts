/** The rule table in use: shipped data merged with the clinic's own changes. */
import { z } from 'zod';
import { RulesInUse } from '../../db/types/rules-in-use.ts';
import { ClinicRules } from '../../db/types/rules.ts';
import { nothing, read, write } from './request.ts';

export const rulesRequests = {
  'rules.current': read(nothing, z.object({ rules: RulesInUse, changes: ClinicRules.nullable() })),
  /** Replaces the clinic's changes; null restores the shipped table. Refused with line and reason when it does not fit. */
  'rules.saveChanges': write(
    z.object({ changes: z.json().nullable() }).strict(),
    z.object({ rules: RulesInUse, changes: ClinicRules.nullable() }),
  ),
} as const;
