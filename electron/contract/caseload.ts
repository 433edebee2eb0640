/** The list of clients and one client's record. */
import { z } from 'zod';
import { Client } from '../../db/types/client.ts';
import { Id, IsoDate } from '../../db/types/common.ts';
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

const kinds = Object.keys(factKinds) as [FactKind, ...FactKind[]];

export const caseloadRequests = {
  'caseload.list': read(nothing, z.array(CaseloadEntry)),
  'client.open': read(z.object({ clientId: Id }).strict(), ClientRecord),
  'client.save': save('client'),
  'visit.save': save('visit'),
  /** Remove one fact (undo brings it back). Clients are archived or erased, never removed. */
  'fact.remove': write(z.object({ kind: z.enum(kinds), id: Id }).strict(), nothing),
  /** Undo or redo the last change of this client since the caseload was opened; the whole record returns. */
  'client.undo': write(z.object({ clientId: Id }).strict(), ClientRecord),
  'client.redo': write(z.object({ clientId: Id }).strict(), ClientRecord),
} as const;
