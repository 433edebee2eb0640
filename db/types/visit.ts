import { z } from 'zod';
import { factFields, Id, IsoDate, Line, Note } from './common.ts';

export const VisitKind = z.enum(['first', 'treatment', 'retest', 'discharge']);
export type VisitKind = z.infer<typeof VisitKind>;

/** One meeting with the client; every observation belongs to one. */
export const Visit = z.object({
  ...factFields,
  clientId: Id,
  date: IsoDate,
  kind: VisitKind,
  minutes: z.number().int().min(0).max(600).nullable(),
  nextVisit: Line,
  /** What changed since the last visit, said by the client. */
  told: Note,
  /** Skilled judgement used, always the therapist's own words. */
  skilled: Note,
  response: Note,
  /** Home program demonstrated back by client or family. */
  taughtBack: Note,
  plan: Note,
});
export type Visit = z.infer<typeof Visit>;
