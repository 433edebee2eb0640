import { z } from 'zod';
import { factFields, Id, Initials, IsoDateTime } from './common.ts';

/** One person's read-back of a sample, line by line. Scores are derived, never stored. */
export const Reading = z.object({
  ...factFields,
  clientId: Id,
  visitId: Id,
  sampleId: Id,
  readAt: IsoDateTime,
  reader: z.enum(['unfamiliar', 'family', 'therapist']),
  readerInitials: Initials,
  /** The reader did not know the text. A therapist after 7 days is labelled not blind. */
  blind: z.boolean(),
  /**
   * How much larger than written the lines were shown: 1 = true size. Null: not known, or not the same for all lines.
   * Absent: read from the paper itself, or kept before this was noted.
   */
  enlargement: z.number().min(0.2).max(10).nullable().optional(),
  /** How often this reader had met the same text before, reading it or taking a sample of it, in the whole caseload. */
  textMetBefore: z.number().int().min(0).max(10_000).optional(),
  /** `typed` = counted on paper ("18 of 24 words"), no text kept. */
  lines: z
    .array(
      z.object({ intended: z.string().max(600), read: z.string().max(600), seconds: z.number().min(0).nullable() }),
    )
    .max(60),
  counted: z.object({ right: z.number().int().min(0), of: z.number().int().min(1) }).nullable(),
});
export type Reading = z.infer<typeof Reading>;
