/** Backup, restore, trail, checking, erasing, one client as a file. */
import { z } from 'zod';
import { ClientRecord } from '../../db/types/record.ts';
import { Id, IsoDate, IsoDateTime } from '../../db/types/common.ts';
import { nothing, read, write } from './request.ts';

const TrailEntry = z.object({
  seq: z.number().int(),
  at: IsoDateTime,
  by: z.string(),
  kind: z.string(),
  action: z.string(),
  summary: z.string(),
});

export const BackupInfo = z.object({
  name: z.string(),
  at: IsoDateTime,
  /** hand, hour, close, migration or restore. */
  reason: z.string(),
  bytes: z.number().int(),
  clients: z.number().int().nullable(),
  lastVisit: IsoDate.nullable(),
  verified: z.boolean(),
});
export type BackupInfo = z.infer<typeof BackupInfo>;

export const BackupState = z.object({
  place: z.string(),
  backups: z.array(BackupInfo),
  /** Second place of the therapist's choice (USB stick), '' = none. */
  second: z.string(),
  secondThere: z.boolean(),
  secondNewest: IsoDateTime.nullable(),
  secondOld: z.boolean(),
});
export type BackupState = z.infer<typeof BackupState>;

const Secret = z.string().min(1).max(400);
const BackupName = z.string().max(200);
/** Instead of asking for a file: the one that the system handed over, or the whole path of a file or its folder. */
const Which = z.object({ handed: z.boolean().optional() }).strict();

export const recordRequests = {
  'trail.list': read(z.object({ clientId: Id }).strict(), z.array(TrailEntry)),
  'trail.verify': read(nothing, z.object({ whole: z.boolean(), entries: z.number().int() })),
  /** Short form of the trail's head: printed on issued pages, typed again to check that nothing before it was rewritten. */
  'trail.fingerprint': read(nothing, z.object({ fingerprint: z.string() })),
  /** 'beyond': the trail is shorter than that. */
  'trail.checkFingerprint': read(
    z.object({ typed: z.string().max(80) }).strict(),
    z.object({ fits: z.enum(['yes', 'no', 'beyond', 'unreadable']), entries: z.number().int() }),
  ),
  /** Integrity of the whole file, references, checksums of every picture, trail; in a worker. */
  'records.check': read(nothing, z.object({ sound: z.boolean(), found: z.string() })),
  'backup.state': read(nothing, BackupState),
  /** Writes, reads back and compares; into the second place as well, where it is there. */
  'backup.now': read(nothing, BackupInfo),
  /** Stops a backup that is being made; nothing half is left. */
  'backup.cancel': read(nothing, nothing),
  'backup.setSecond': write(z.object({ folder: z.string().max(1000) }).strict(), BackupState),
  /** What the backups hold, before any caseload is open. The passphrase is the backups' own. */
  'backup.listWith': read(z.object({ passphrase: Secret }).strict(), z.array(BackupInfo)),
  /** Brings a backup file from elsewhere into the list. */
  'backup.bring': read(
    Which.extend({ place: z.string().max(1000).optional() }),
    z.object({ name: z.string().nullable() }),
  ),
  /** Reads what can still be read of a damaged caseload into a copy set aside; `backup.undoRestore` takes it into use. */
  'records.salvage': write(
    z.object({ passphrase: Secret }).strict(),
    z.object({ name: z.string(), clients: z.number().int(), lastVisit: IsoDate.nullable(), lost: z.number().int() }),
  ),
  /** Sets aside what it replaces; `backup.undoRestore` brings that back. */
  'backup.restore': write(
    z.object({ name: BackupName, passphrase: Secret }).strict(),
    z.object({ keptAs: z.string() }),
  ),
  'backup.undoRestore': write(z.object({ keptAs: z.string().max(200) }).strict(), z.object({ keptAs: z.string() })),
  /** Answers which older files still hold that client: they are the therapist's to delete. */
  'client.erase': write(
    z.object({ clientId: Id }).strict(),
    z.object({ stillIn: z.array(z.string()), unknown: z.array(z.string()) }),
  ),
  /** Two records of one person become one; undo at the remaining record brings both back. */
  'client.merge': write(z.object({ from: Id, into: Id }).strict(), ClientRecord),
  /** One client with the pictures as their original bytes, in open formats, not encrypted; answers where it lies. */
  'client.export': write(z.object({ clientId: Id }).strict(), z.object({ file: z.string() })),
  /** Every client, one file each, in a new folder. Not encrypted. */
  'caseload.export': write(nothing, z.object({ folder: z.string(), files: z.number().int() })),
  'client.import': write(Which, z.object({ clientId: Id.nullable() })),
} as const;
