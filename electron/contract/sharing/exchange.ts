/** Files for the clinic's record system. Each is saved where the therapist chooses and noted in the trail. */
import { z } from 'zod';
import { Id } from '../../../db/types/common.ts';
import { write } from '../request.ts';

const Saved = z.object({ saved: z.boolean() });

export const exchangeRequests = {
  /** One client as an HL7 FHIR R4 Bundle (JSON). */
  'exchange.bundle': write(
    z
      .object({
        clientId: Id,
        withName: z.boolean(),
        withPersonalText: z.boolean(),
        /** Bytes of issued pages, and of scans; without them size and hash. */
        withDocuments: z.boolean(),
        withScans: z.boolean(),
      })
      .strict(),
    Saved,
  ),
  /** All measures of one client, or of every client (null), as CSV; clients by code only. */
  'exchange.csv': write(z.object({ clientId: Id.nullable() }).strict(), Saved),
  /** What the columns and measures of that CSV mean, as CSV. Holds no client's data. */
  'exchange.dictionary': write(z.object({}).strict(), Saved),
} as const;
