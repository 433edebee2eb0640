/** What progress needs to know of the whole clinic. */
import { z } from 'zod';
import { RepeatPairs } from '../../db/types/rules-in-use.ts';
import { nothing, read } from './request.ts';

export const progressRequests = {
  /** Repeat samples of unchanged hands in the whole caseload. */
  'progress.repeatPairs': read(nothing, z.object({ pairs: RepeatPairs })),
} as const;
