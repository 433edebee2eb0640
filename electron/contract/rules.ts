/** The rule table in use: shipped data merged with the clinic's own changes. */
import { z } from 'zod';
import { nothing, read, write } from './request.ts';

export const rulesRequests = {
  'rules.changes': read(nothing, z.object({ version: z.string(), changes: z.json().nullable() })),
  /** Replaces the clinic's changes; null restores the shipped table. Refused with line and reason when it does not fit. */
  'rules.saveChanges': write(z.object({ changes: z.json().nullable() }).strict(), z.object({ version: z.string() })),
} as const;
