/** Starting, unlocking, locking, the demo, and where the caseload lies. */
import { z } from 'zod';
import { Initials, IsoDateTime, Line } from '../../db/types/common.ts';
import { nothing, read, write } from './request.ts';

export const AppStatus = z.object({
  state: z.enum(['first-start', 'locked', 'open']),
  demo: z.boolean(),
  demoAvailable: z.boolean(),
  folder: z.string(),
  initials: z.string(),
  clinic: z.string(),
  credentials: z.string(),
  /** The weekly check of the whole file found something that does not fit. */
  damageFound: z.boolean(),
  lastBackupAt: IsoDateTime.nullable(),
  /** ISO date of today by the shell's clock: logic takes its date from here. */
  today: z.string(),
  version: z.string(),
  shell: z.enum(['electron', 'browser']),
});
export type AppStatus = z.infer<typeof AppStatus>;

/** Secrets are length-limited so that a paste of a file cannot be hashed for minutes. */
const Passphrase = z.string().min(1).max(400);

export const appRequests = {
  'app.status': read(nothing, AppStatus),
  'app.create': write(
    z.object({ passphrase: Passphrase, initials: Initials, clinic: Line }).strict(),
    z.object({ status: AppStatus, recoveryKey: z.string() }),
  ),
  'app.unlock': read(z.object({ passphrase: Passphrase }).strict(), AppStatus),
  'app.lock': read(nothing, AppStatus),
  'app.openDemo': read(nothing, AppStatus),
  'app.removeDemo': write(nothing, AppStatus),
  'app.leaveDemo': read(nothing, AppStatus),
  'app.therapist': write(z.object({ initials: Initials, clinic: Line, credentials: Line }).strict(), AppStatus),
  /** A new recovery key; the old sheet opens nothing any more. */
  'app.renewRecovery': write(z.object({ passphrase: Passphrase }).strict(), z.object({ recoveryKey: z.string() })),
  /** Encrypts the whole file with a new key, after a passphrase fell into other hands; locks the caseload. */
  'app.rekey': write(
    z.object({ passphrase: Passphrase, next: Passphrase }).strict(),
    z.object({ recoveryKey: z.string() }),
  ),
  'app.changePassphrase': write(z.object({ current: Passphrase, next: Passphrase }).strict(), nothing),
} as const;
