/** Starting, unlocking, locking, the demo, and where the caseload lies. */
import { z } from 'zod';
import { Initials, IsoDate, IsoDateTime, Line, ScreenLanguage } from '../../db/types/common.ts';
import { nothing, read, write } from './request.ts';

/** What the window keeps for its therapist: no client data. */
export const Preferences = z.object({
  theme: z.enum(['system', 'light', 'dark', 'contrast']),
  /** Rows and controls of 44 px, as with a finger. */
  largeTargets: z.boolean(),
  /** Keys without Ctrl, Alt or F inside the intake's answers. */
  singleKeys: z.boolean(),
  /** Minutes without use after which the caseload locks; 0 = never by itself. */
  lockMinutes: z.union([z.literal(0), z.number().int().min(2).max(60)]),
  /** Of the screens; 'system' = the system's own where there are words for it. */
  language: z.enum(['system', ...ScreenLanguage.options]).default('system'),
  /** Keys of commands that differ from the shipped ones, by the command's id. */
  keys: z.record(z.string().max(40), z.string().max(30)),
});
export type Preferences = z.infer<typeof Preferences>;

export const AppStatus = z.object({
  state: z.enum(['first-start', 'locked', 'open']),
  demo: z.boolean(),
  demoAvailable: z.boolean(),
  folder: z.string(),
  /** Id of whoever signed in; null with one sign-in for all, and while locked. */
  person: z.string().nullable(),
  /** More than one person signs in: initials are asked for too. */
  severalPeople: z.boolean(),
  name: z.string(),
  initials: z.string(),
  clinic: z.string(),
  credentials: z.string(),
  /** Works as an assistant or student: entries wait for a co-signature. */
  assistant: z.boolean(),
  /** The weekly check of the whole file found something that does not fit. */
  damageFound: z.boolean(),
  lastBackupAt: IsoDateTime.nullable(),
  /** The second place for backups has had no copy for over a week. */
  secondOld: z.boolean(),
  /**
   * What the opening found missing or strange: the log of the last session, changes that the newest backup has, a trail
   * that differs from a backup's or from the sealed note, a trail shorter than the note, a note of another caseload or
   * none, tables or triggers that Fairhand does not make.
   */
  missing: z.enum([
    'nothing',
    'log',
    'newer-backup',
    'rewritten',
    'rolled-back',
    'other-caseload',
    'seal-missing',
    'foreign-tables',
  ]),
  /** The operating system's key store holds a key for this caseload. */
  systemKey: z.boolean(),
  /** Day on which the caseload was moved to another laptop: what is written here does not get there. */
  movedOn: IsoDate.nullable(),
  /** ISO date of today by the shell's clock: logic takes its date from here. */
  today: z.string(),
  version: z.string(),
  shell: z.enum(['electron', 'browser']),
  /** As usual while no caseload is open. */
  preferences: Preferences,
});
export type AppStatus = z.infer<typeof AppStatus>;

/** Secrets are length-limited so that a paste of a file cannot be hashed for minutes. */
export const Passphrase = z.string().min(1).max(400);
/** Initials as typed at the lock: asked for where several people sign in. */
const Typed = z.string().max(40);

export const appRequests = {
  'app.status': read(nothing, AppStatus),
  'app.create': write(
    z.object({ passphrase: Passphrase, initials: Initials, clinic: Line }).strict(),
    z.object({ status: AppStatus, recoveryKey: z.string() }),
  ),
  'app.unlock': read(z.object({ passphrase: Passphrase, initials: Typed.optional() }).strict(), AppStatus),
  /** The passphrase is lost: opens once by the recovery key, which a new passphrase and a new key replace. */
  'app.recover': write(
    z.object({ recoveryKey: Passphrase, next: Passphrase, initials: Typed.optional() }).strict(),
    z.object({ status: AppStatus, recoveryKey: z.string() }),
  ),
  /** Prints the recovery sheet that the window shows: all that is printed while locked. */
  'app.printRecoverySheet': read(nothing, nothing),
  /** Somebody is at work (keys, pen, pointer): idle time starts anew. */
  'app.used': read(nothing, nothing),
  /** A client file or backup that the system handed over (a double click), until it is taken in or put away. */
  'app.handed': read(
    nothing,
    z.object({ file: z.object({ name: z.string(), kind: z.enum(['client', 'backup']) }).nullable() }),
  ),
  'app.putHandedAway': read(nothing, nothing),
  /** Opens with the key that the operating system's key store holds. */
  'app.unlockWithSystem': read(nothing, AppStatus),
  /** Whether the operating system's key store can be used here. May make the system ask its user. */
  'app.systemKey': read(
    nothing,
    z.object({ state: z.enum(['not-in-this-window', 'none', 'plain-text', 'several', 'off', 'on']) }),
  ),
  /** Lets the operating system's key store open this caseload; asks for the passphrase. */
  'app.keepSystemKey': write(z.object({ passphrase: Passphrase }).strict(), AppStatus),
  'app.forgetSystemKey': write(nothing, AppStatus),
  /** The therapist knows why the opening found something strange: it is noted in the trail and sealed anew. */
  'app.acknowledge': write(nothing, AppStatus),
  'app.lock': read(nothing, AppStatus),
  'app.openDemo': read(nothing, AppStatus),
  'app.removeDemo': write(nothing, AppStatus),
  'app.leaveDemo': read(nothing, AppStatus),
  'app.therapist': write(
    z.object({ initials: Initials, clinic: Line, credentials: Line, assistant: z.boolean().optional() }).strict(),
    AppStatus,
  ),
  'app.prefer': write(Preferences.strict(), AppStatus),
  /**
   * A changed passphrase or, with the same one, a new recovery sheet: the whole file is encrypted under a new key and
   * locked. Where several people sign in, '' is answered when the sheet stays in use. Old passphrase, old sheet and old key files open nothing of it any more.
   */
  'app.rekey': write(
    z.object({ passphrase: Passphrase, next: Passphrase }).strict(),
    z.object({ recoveryKey: z.string() }),
  ),
} as const;
