/**
 * What stands behind the contract while the window is open: the caseload (or none), the shell's dialogs, the clock.
 * Both shells open it the same way and carry requests to `call`.
 */
import type { Told } from '../../renderer/logic/texts/screens/en/screens-en.ts';
import { toldIn } from '../told.ts';
import { randomUUID } from 'node:crypto';
import path from 'node:path';
import { caseloadExists, signInsIn, type Caseload, type Doing } from '../../db/index.ts';
import type { AppStatus } from '../contract/app.ts';
import { Refusal } from '../contract/envelope.ts';
import { checkIsDue, secondPlaceIsOld } from '../files/backup/backup-schedule.ts';
import { newestIn } from '../files/backup/backup-second.ts';
import { freeKeys } from '../files/freed-keys.ts';
import { endPageWorker } from '../files/measure/page-file.ts';
import { hasSystemKey } from '../files/system-key.ts';
import { TrailWatch } from '../files/trail-watch.ts';
import { tried } from '../files/unlock-delay.ts';
import { checkCaseload } from '../files/backup/backup.ts';
import { backupNames, backupsFolder } from '../files/backup/backup-list.ts';
import { autoBackup, type AutoBackup } from '../files/backup/backup-auto.ts';
import type { HandedFile } from '../files/handed-file.ts';
import type { BlobSource } from '../window-files.ts';
import type { ServiceOptions } from '../service-options.ts';
import { SignedIn } from './sign-in/signed-in.ts';

/** Scans waiting for the request that names them; more than this many means a runaway page. */
const maxStaged = 24;

/** Everything a handler may use. */
export class Services implements BlobSource {
  readonly options: ServiceOptions;
  caseload: Caseload | null = null;
  readonly signedIn = new SignedIn(() => this.caseload);
  demo = false;
  damageFound = false;
  missing: AppStatus['missing'] = 'nothing';
  /** Handed over by the system, and neither taken in nor put away yet. */
  handed: HandedFile | null = null;
  /** The backup that the therapist asked for, while it runs. */
  backingUp: AbortController | null = null;
  readonly measuring = new Map<string, AbortController>();
  #staged = new Map<string, Uint8Array>();
  #lastUse: number;
  #backups: AutoBackup | null = null;
  /** Checks of the file that are going on. */
  #checking = new AbortController();
  #lastTry: Promise<void> = Promise.resolve();
  readonly #watch: TrailWatch;

  constructor(options: ServiceOptions) {
    this.options = options;
    this.#watch = new TrailWatch(options.state ?? null);
    this.#lastUse = options.now().getTime();
  }

  get folder(): string {
    return this.demo ? this.demoFolder : this.options.folder;
  }
  get demoFolder(): string {
    return path.join(this.options.folder, 'demo');
  }
  get idleMs(): number {
    const now = this.options.now().getTime();
    // A clock that was set back would keep an unattended caseload open until it has caught up.
    if (now < this.#lastUse) this.#lastUse = now;
    return now - this.#lastUse;
  }

  /** Slows guessing down (unlock-delay.ts), for each person by herself. */
  slowed<T>(attempt: () => Promise<T>, initials = ''): Promise<T> {
    const now = () => this.options.now().getTime();
    // One at a time: many asked at once would all be let through.
    const turn = this.#lastTry.then(() => tried(attempt, this.folder, now, this.several ? initials : ''));
    this.#lastTry = turn.then(
      () => undefined,
      () => undefined,
    );
    return turn;
  }

  /** Takes an unlocked caseload over and looks after its backups. */
  async took(caseload: Caseload, person: string | null): Promise<void> {
    this.caseload?.close();
    this.caseload = caseload;
    this.signedIn.id = person ?? this.signedIn.onlyOne();
    this.used();
    this.damageFound = false;
    this.missing = caseload.logLost ? 'log' : 'nothing';
    if (this.missing === 'nothing') this.missing = this.#watch.strange(caseload, !this.demo);
    this.#seal();
    const second = () => this.secondPlace() || null;
    const backups = await autoBackup({ caseload, now: this.options.now, second });
    // It may have been locked meanwhile.
    if (this.caseload !== caseload) return;
    this.#backups = backups;
    if (this.missing === 'nothing' && backups.behind) this.missing = 'newer-backup';
    if (this.missing === 'nothing' && backups.rewritten) this.missing = 'rewritten';
    if (!this.demo) void this.#checkAtStart(caseload).catch(() => undefined);
  }

  #seal(): void {
    if (this.demo || !this.caseload || this.missing !== 'nothing') return;
    try {
      this.#watch.seal(this.caseload, this.options.now().toISOString());
    } catch {
      // A full disk: the note stays as it was and tells of less.
    }
  }

  /** Seals anew how far the trail goes: after a change of the key, and after a restore. */
  reseal = (identity: Uint8Array, trail: { entries: number; head: string }): void =>
    this.#watch.sealUnder(this.folder, identity, trail, this.options.now().toISOString());

  /** What was put in place just now was put there by the therapist. */
  sealAtNextOpening = (): void => this.#watch.replaced(this.folder);

  /** The therapist knows why: noted in the trail, and sealed as it is. */
  acknowledge(): void {
    const caseload = this.need();
    if (this.missing === 'nothing') return;
    caseload.putSetting('acknowledged', { what: this.missing, on: this.today() }, this.doing());
    this.missing = 'nothing';
    this.#seal();
  }

  /** Looks through the open caseload in a worker; the lock cancels it. @throws Refusal cancelled */
  check(identity: Uint8Array, what: 'check' | 'start'): ReturnType<typeof checkCaseload> {
    return checkCaseload(this.folder, identity, what, this.#checking.signal);
  }

  /** Trail, and the pages of a file that was too large to be looked through while it opened; in a worker. */
  async #checkAtStart(caseload: Caseload): Promise<void> {
    const { file, trail } = await caseload.withKey((identity) => this.check(identity, 'start'));
    if (this.caseload === caseload) this.#judge(file === 'ok' && trail.whole);
  }

  #judge(sound: boolean): void {
    this.damageFound = !sound;
    if (!sound) this.options.emit({ kind: 'damage' });
  }

  /** Checks every page, reference and picture in a worker once a week; the demo is left alone. */
  async weeklyCheck(): Promise<void> {
    const { caseload } = this;
    const now = this.options.now().toISOString();
    if (this.demo || !caseload || !checkIsDue((caseload.setting('lastCheck') as string | null) ?? null, now)) return;
    const { file, trail } = await caseload.withKey((identity) => this.check(identity, 'check'));
    if (this.caseload !== caseload) return;
    this.#judge(file === 'ok' && trail.whole);
    if (!this.damageFound) caseload.putSetting('lastCheck', now, this.doing());
  }

  /** Makes an hourly backup if one is due; at closing, one if anything changed. The demo is not backed up by itself. */
  async lookAfterBackups(closing = false): Promise<void> {
    if (this.demo || !this.caseload) return;
    this.#seal();
    await (closing ? this.#backups?.ifChanged('close') : this.#backups?.look());
  }

  /** The open caseload. @throws Refusal locked */
  need(): Caseload {
    if (!this.caseload) throw new Refusal('locked');
    return this.caseload;
  }

  doing(): Doing {
    return { at: this.options.now().toISOString(), by: this.therapist().initials || '–' };
  }

  therapist = () => this.signedIn.therapist();
  preferences = () => this.signedIn.preferences();

  /** More than one person signs in: the lock screen asks for initials too. */
  get several(): boolean {
    return signInsIn(this.folder).length > 1;
  }

  /** What is told outside the window, in the language of the screens. */
  told = (): Told => toldIn(this.preferences().language);

  /** Idle time after which the caseload locks, ms; Infinity = never by itself. */
  get lockMs(): number {
    const { lockMinutes } = this.preferences();
    return lockMinutes === 0 ? Infinity : lockMinutes * 60_000;
  }

  /** Folder for second copies of backups; '' = none chosen. */
  secondPlace(): string {
    return (this.caseload?.setting('secondPlace') as string | null) ?? '';
  }

  /** True when the second place is to be plugged in. */
  secondOld(): boolean {
    const place = this.secondPlace();
    return place !== '' && secondPlaceIsOld(newestIn(this.folder, place), this.options.now().toISOString());
  }

  /** Local calendar date of the shell's clock. */
  today(): string {
    const now = this.options.now();
    return new Date(now.getTime() - now.getTimezoneOffset() * 60_000).toISOString().slice(0, 10);
  }

  status(): AppStatus {
    const state = this.caseload ? 'open' : caseloadExists(this.folder) ? 'locked' : 'first-start';
    return {
      state,
      demo: this.demo,
      demoAvailable: this.options.demoSource !== null,
      folder: this.folder,
      ...this.therapist(),
      person: this.signedIn.id,
      severalPeople: this.several,
      damageFound: this.damageFound,
      lastBackupAt: this.caseload ? (backupNames(backupsFolder(this.folder))[0]?.at ?? null) : null,
      secondOld: this.secondOld(),
      missing: this.caseload ? this.missing : 'nothing',
      movedOn: (this.caseload?.setting('moved') as { on: string } | null)?.on ?? null,
      systemKey: !this.demo && this.options.port.keyStore !== null && hasSystemKey(this.folder),
      today: this.today(),
      version: this.options.version,
      shell: this.options.shell,
      preferences: this.preferences(),
    };
  }

  /** Closes the caseload and forgets every staged byte. */
  lock(why: 'idle' | 'sleep' | 'asked'): void {
    for (const run of this.measuring.values()) run.abort();
    this.measuring.clear();
    this.#staged.clear();
    const wasOpen = this.caseload !== null;
    this.backingUp?.abort();
    this.#checking.abort();
    this.#checking = new AbortController();
    void this.#backups?.stop();
    this.#backups = null;
    this.#seal();
    const { caseload } = this;
    this.caseload = null;
    this.signedIn.id = null;
    try {
      caseload?.close();
    } catch {
      // A full or read-only disk: what was saved lies in the log, which the next opening reads.
    }
    endPageWorker();
    if (!wasOpen) return;
    this.options.emit({ kind: 'locked', why });
    // The window is told first.
    setImmediate(freeKeys);
  }

  offer(file: HandedFile): void {
    this.handed = file;
    this.options.emit({ kind: 'handed' });
  }

  takeStaged(token: string): Uint8Array {
    const bytes = this.#staged.get(token);
    if (!bytes) throw new Refusal('not-found');
    this.#staged.delete(token);
    return bytes;
  }

  leaveDemo(): void {
    if (this.demo) this.lock('asked');
    this.demo = false;
  }

  /** Notes that somebody is at work: idle time starts anew. */
  used(): void {
    this.#lastUse = this.options.now().getTime();
  }

  readBlob(id: string): { bytes: Uint8Array; mime: string } | null {
    const blob = this.caseload?.blob(id);
    return blob ? { bytes: blob.data, mime: blob.mime } : null;
  }

  stageBlob(bytes: Uint8Array): string {
    this.need();
    if (this.#staged.size >= maxStaged) this.#staged.delete(this.#staged.keys().next().value!);
    const token = randomUUID();
    this.#staged.set(token, bytes);
    return token;
  }
}
