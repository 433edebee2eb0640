import { z } from 'zod';
import { ClockTime, CoSign, factFields, Id, Initials, IsoDate, IsoDateTime, Line, Note } from './common.ts';
import { TaskKind } from './sample.ts';

export const VisitKind = z.enum(['first', 'treatment', 'retest', 'discharge']);
export type VisitKind = z.infer<typeof VisitKind>;

/** The smallest and the largest group of one session (common practice, no source). */
export const GROUP = { least: 2, most: 12 } as const;

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
  /** How many clients shared the session, this one included; nothing else of them. Absent = alone. */
  groupOf: z.number().int().min(GROUP.least).max(GROUP.most).optional(),
  /** Absent = recorded by a therapist. */
  coSign: CoSign.optional(),
});
export type Visit = z.infer<typeof Visit>;

/** What is to happen next time: written at the end of a visit, shown at the start of the next. */
export const VisitPlan = z.object({
  ...factFields,
  clientId: Id,
  /** The visit at whose end it was written. */
  visitId: Id,
  /** Day of the next visit; null = not agreed yet. */
  nextOn: IsoDate.nullable(),
  /** Hour, so that a retest falls at the same time of day. */
  hour: ClockTime.nullable(),
  /** Minutes after the tablet, or another word on the dose; '' = none. */
  dose: Line,
  /** Task to write again; null = no retest. */
  retest: TaskKind.nullable(),
  /** Trial to go on with; null = none. */
  trialId: Id.nullable(),
  questions: Note,
});
export type VisitPlan = z.infer<typeof VisitPlan>;
