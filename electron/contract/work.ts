/** What waits for the therapist: a few facts of each client, asked for some clients at a time. */
import { z } from 'zod';
import { ClockTime, Id, IsoDate } from '../../db/types/common.ts';
import { read } from './request.ts';

/** Clients asked for at once: a look takes a few milliseconds each, and the window stays quick between the looks. */
export const WORK_AT_ONCE = 100;

/** The few facts of one client that the worklist looks at. */
export const WorkFacts = z.object({
  clientId: Id,
  code: z.string(),
  archived: z.boolean(),
  discharged: z.boolean(),
  lastVisit: IsoDate.nullable(),
  visitToday: z.boolean(),
  /** Day and hour of the next visit as planned; null = none. */
  nextOn: IsoDate.nullable(),
  nextHour: ClockTime.nullable(),
  /** Days on which samples were written that nobody has read. */
  unreadSince: z.array(IsoDate),
  reportDue: IsoDate.nullable(),
  /** Days of visits whose note has no skilled judgement yet. */
  notesUnwritten: z.array(IsoDate),
  certifiedUntil: IsoDate.nullable(),
  authorizedLeft: z.number().int().nullable(),
  /** Day of a program draft that is not approved. */
  draftSince: IsoDate.nullable(),
  /** Days by which active goals are to be reached. */
  goalsDue: z.array(IsoDate),
  /** Red flags that are open and not reviewed. */
  flagsOpen: z.number().int().min(0),
});
export type WorkFacts = z.infer<typeof WorkFacts>;

export const workRequests = {
  /** Clients that are not there, or cannot be read, are left out. */
  'caseload.work': read(z.object({ clientIds: z.array(Id).max(WORK_AT_ONCE) }).strict(), z.array(WorkFacts)),
} as const;
