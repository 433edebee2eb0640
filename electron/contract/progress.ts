/** What progress needs to know of the whole clinic. */
import { z } from 'zod';
import { nothing, read } from './request.ts';

const Percent = z.number().min(0).max(100);

export const progressRequests = {
  /** Repeat samples of unchanged hands in the whole caseload, percent of words read: numbers only, nothing says whose. */
  'progress.repeatPairs': read(
    nothing,
    z.object({
      pairs: z.array(
        z.object({
          task: z.enum(['copy', 'own', 'digits']),
          reader: z.enum(['unfamiliar', 'family', 'therapist']),
          first: Percent,
          second: Percent,
        }),
      ),
    }),
  ),
} as const;
