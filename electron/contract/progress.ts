/** What progress needs to know of the whole clinic. */
import { z } from 'zod';
import { nothing, read } from './request.ts';

const Count = z.object({ right: z.number().min(0), words: z.number().positive() });

export const progressRequests = {
  /** Repeat samples of unchanged hands in the whole caseload, words right of words written: numbers only, nothing says whose. */
  'progress.repeatPairs': read(
    nothing,
    z.object({
      pairs: z.array(
        z.object({
          task: z.string().nullish(),
          kind: z.string().nullish(),
          first: Count,
          second: Count,
        }),
      ),
    }),
  ),
} as const;
