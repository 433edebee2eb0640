/** Hand-overs between the laptops of one clinic: keys, files, what is taken in, what both sides changed. */
import { z } from 'zod';
import { Id, IsoDateTime } from '../../../db/types/common.ts';
import { nothing, read, write } from '../request.ts';

const Colleague = z.object({ name: z.string(), recipient: z.string(), short: z.string() });

const Named = z.object({ id: Id, code: z.string(), name: z.string() });

const Version = z.object({ by: z.string(), at: IsoDateTime });

export const BothChangedRow = z.object({
  id: z.string(),
  clientId: Id,
  code: z.string(),
  what: z.string(),
  kept: Version,
  other: Version,
  /** Field by field what stands and what the other side has; one row "all of it" where a side took it away. */
  fields: z.array(z.object({ field: z.string(), kept: z.string(), other: z.string() })),
});
export type BothChangedRow = z.infer<typeof BothChangedRow>;

export const HandoverState = z.object({
  recipient: z.string(),
  short: z.string(),
  colleagues: z.array(Colleague),
  /** Shared folder, '' = none. */
  folder: z.string(),
  folderThere: z.boolean(),
  /** Another laptop with the same key looks into the folder: when it last did. */
  alsoWatched: IsoDateTime.nullable(),
  /** Files for this key in the folder that were not taken in yet. */
  waiting: z.array(z.string()),
  /** Files for this key that are still being copied. */
  arriving: z.number().int(),
  bothChanged: z.array(BothChangedRow),
  /** `one` was taken in; `other` was here. */
  twins: z.array(z.object({ one: Named, other: Named })),
});
export type HandoverState = z.infer<typeof HandoverState>;

const ExpectedClient = Named.extend({
  state: z.enum(['new', 'known', 'nothing-new', 'erased-here']),
  changes: z.number().int(),
  codeHere: z.string(),
  twins: z.array(Named),
});

export const LookedInto = z.object({
  /** Null = the choice of a file was cancelled. */
  token: z.string().nullable(),
  name: z.string(),
  madeAt: z.string(),
  from: z.string(),
  clients: z.array(ExpectedClient),
});
export type LookedInto = z.infer<typeof LookedInto>;

const Recipient = z.string().max(200);

export const handoverRequests = {
  // The first look makes this caseload's pair of keys.
  'handover.state': write(nothing, HandoverState),
  /** What waits in the shared folder, asked now and then from any screen; nothing is taken in. */
  'handover.waiting': read(
    nothing,
    z.object({ folder: z.boolean(), there: z.boolean(), waiting: z.number().int(), arriving: z.number().int() }),
  ),
  'handover.addColleague': write(
    z.object({ name: z.string().trim().min(1).max(80), key: z.string().max(2000) }).strict(),
    HandoverState,
  ),
  'handover.removeColleague': write(z.object({ recipient: Recipient }).strict(), HandoverState),
  'handover.setFolder': write(z.object({ folder: z.string().max(1000) }).strict(), HandoverState),
  /** These clients (null = all), encrypted to a colleague, as a file or into the shared folder. */
  'handover.make': write(
    z
      .object({ clientIds: z.array(Id).min(1).max(10_000).nullable(), to: Recipient, into: z.enum(['file', 'folder']) })
      .strict(),
    z.object({ saved: z.boolean(), name: z.string(), clients: z.number().int() }),
  ),
  /** Reads a hand-over (null = asks for a file) and says what taking it in would do; nothing is changed. */
  'handover.look': read(z.object({ name: z.string().max(200).nullable() }).strict(), LookedInto),
  'handover.take': write(
    z.object({ token: z.string().max(60), clientIds: z.array(Id).min(1) }).strict(),
    z.object({ changes: z.number().int(), recoded: z.array(z.string()) }),
  ),
  'handover.settle': write(
    z.object({ id: z.string().max(200), take: z.enum(['kept', 'other']) }).strict(),
    HandoverState,
  ),
} as const;
