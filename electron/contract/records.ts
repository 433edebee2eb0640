/** Backup, restore, trail, erasing. */
import { z } from 'zod';
import { Id, IsoDateTime } from '../../db/types/common.ts';
import { nothing, read, write } from './request.ts';

export const TrailEntry = z.object({
  seq: z.number().int(),
  at: IsoDateTime,
  by: z.string(),
  kind: z.string(),
  action: z.string(),
  summary: z.string(),
});
export type TrailEntry = z.infer<typeof TrailEntry>;

export const BackupInfo = z.object({
  name: z.string(),
  at: IsoDateTime,
  bytes: z.number().int(),
  clients: z.number().int().nullable(),
  lastVisit: z.string().nullable(),
  verified: z.boolean(),
});
export type BackupInfo = z.infer<typeof BackupInfo>;

export const recordRequests = {
  'trail.list': read(z.object({ clientId: Id }).strict(), z.array(TrailEntry)),
  'trail.verify': read(nothing, z.object({ whole: z.boolean(), entries: z.number().int() })),
  'backup.list': read(nothing, z.array(BackupInfo)),
  /** Writes, reads back and compares. */
  'backup.now': read(nothing, BackupInfo),
  /** Saves what it replaces first. The passphrase is the backup's own. */
  'backup.restore': write(
    z.object({ name: z.string().max(200), passphrase: z.string().min(1).max(400) }).strict(),
    z.object({ keptAs: z.string() }),
  ),
  'client.erase': write(z.object({ clientId: Id }).strict(), nothing),
} as const;
