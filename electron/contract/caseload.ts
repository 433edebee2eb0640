/** The list of clients, what waits for the therapist, and one client's record. */
import { z } from 'zod';
import { Client } from '../../db/types/client.ts';
import { ClockTime, Id, IsoDate, Note } from '../../db/types/common.ts';
import { ClientRecord, factKinds, type FactKind } from '../../db/types/record.ts';
import { nothing, read, save, write } from './request.ts';

export const CaseloadEntry = z.object({
  id: Id,
  code: z.string(),
  name: z.string(),
  birthYear: Client.shape.birthYear,
  diagnoses: z.string(),
  lastVisit: IsoDate.nullable(),
  visits: z.number().int(),
  archivedOn: IsoDate.nullable(),
});
export type CaseloadEntry = z.infer<typeof CaseloadEntry>;

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
  /** Days of visits that an assistant recorded and nobody has co-signed. */
  notCoSigned: z.array(IsoDate),
  certifiedUntil: IsoDate.nullable(),
  authorizedLeft: z.number().int().nullable(),
  /** Day of a program draft that is not approved. */
  draftSince: IsoDate.nullable(),
  /** That draft was written or changed by an assistant and nobody has co-signed it. */
  draftNotCoSigned: z.boolean(),
  /** Days by which active goals are to be reached. */
  goalsDue: z.array(IsoDate),
  /** Red flags that are open and not reviewed. */
  flagsOpen: z.number().int().min(0),
});
export type WorkFacts = z.infer<typeof WorkFacts>;

const kinds = Object.keys(factKinds) as [FactKind, ...FactKind[]];

/** Words typed into a form that are no fact yet outlive a lock, a close and a kill. Which form: its name and its ids. */
const Form = z.string().regex(/^[a-z][a-z0-9./-]{0,199}$/i);
/** By the field's label; a field takes no more than a note. */
const Words = z
  .record(z.string().max(200), Note)
  .refine((fields) => Object.keys(fields).length <= 60, 'too many fields');

export const caseloadRequests = {
  'caseload.list': read(nothing, z.array(CaseloadEntry)),
  /**
   * Clients that are not there, or cannot be read, are left out. `soon`: with the clinic's repeat pairs as far as they
   * are known, so that the first answer need not wait until every record is read.
   */
  'caseload.work': read(
    z.object({ clientIds: z.array(Id).max(WORK_AT_ONCE), soon: z.boolean().optional() }).strict(),
    z.array(WorkFacts),
  ),
  'client.open': read(z.object({ clientId: Id }).strict(), ClientRecord),
  'client.save': save('client'),
  'visit.save': save('visit'),
  /** Remove one fact (undo brings it back). Clients are archived or erased, never removed. */
  'fact.remove': write(z.object({ kind: z.enum(kinds), id: Id }).strict(), nothing),
  /** Undo or redo the last change of this client since the caseload was opened; the whole record returns. */
  'client.undo': write(z.object({ clientId: Id }).strict(), ClientRecord),
  'client.redo': write(z.object({ clientId: Id }).strict(), ClientRecord),
  /** Keeps the words of a form; no fields: they were used, or given up. */
  'typed.keep': write(z.object({ place: Form, clientId: Id.nullable(), fields: Words }).strict(), nothing),
  'typed.kept': read(z.object({ place: Form }).strict(), z.object({ fields: Words })),
} as const;
