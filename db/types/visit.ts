import { z } from 'zod';
import { factFields, Id, Initials, IsoDate, IsoDateTime, Line, Note } from './common.ts';

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
  /** Timed units as the payer counts them; absent = not counted. */
  units: z.number().int().min(0).max(40).nullable().optional(),
  /** Added later: what stood in the note before stays as it was. Absent = none. */
  addenda: z
    .array(z.object({ at: IsoDateTime, by: Initials, text: Note }))
    .max(50)
    .optional(),
});
export type Visit = z.infer<typeof Visit>;
