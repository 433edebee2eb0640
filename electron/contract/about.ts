/** What this installation is, and a text for whoever helps when it fails. Neither holds anything of a client. */
import { z } from 'zod';
import { Id } from '../../db/types/common.ts';
import { nothing, read } from './request.ts';

export const LastPlace = z
  .object({
    place: z.enum(['caseload', 'client', 'records', 'rules', 'handover', 'settings', 'figures']),
    clientId: Id.nullable(),
    visitId: z.string().max(40),
    tab: z.string().max(20),
    /** Which part of the record was shown. */
    part: z.enum(['visit', 'record', 'timeline', 'trail']),
    scroll: z.array(z.number()).max(21),
    field: z.number().int(),
    caret: z.number().int().nullable(),
  })
  .strict();
export type LastPlace = z.infer<typeof LastPlace>;

export const aboutRequests = {
  'about.facts': read(
    nothing,
    z.object({ rows: z.array(z.object({ what: z.string(), is: z.string() })), folder: z.string() }),
  ),
  /** Names, versions and licence texts of everything that others wrote. */
  'about.licences': read(nothing, z.object({ text: z.string() })),
  /** The text that can be sent to whoever helps, to read first. */
  'about.diagnostics': read(nothing, z.object({ text: z.string() })),
  'about.saveDiagnostics': read(nothing, z.object({ saved: z.boolean() })),
  /** Where the therapist is, so that a start after a crash leads back there: ids and numbers only. */
  'about.keepPlace': read(z.object({ at: LastPlace }).strict(), nothing),
  'about.lastPlace': read(nothing, z.object({ at: LastPlace.nullable() })),
} as const;
