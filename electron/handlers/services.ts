/**
 * What stands behind the contract while the window is open: the caseload (or none), the shell's dialogs, the clock.
 * Both shells open it the same way and carry requests to `call`.
 */
import { randomUUID } from 'node:crypto';
import { rm } from 'node:fs/promises';
import path from 'node:path';
import { caseloadExists, type Caseload, type Doing } from '../../db/index.ts';
import type { AppStatus } from '../contract/app.ts';
import { Refusal } from '../contract/envelope.ts';
import type { ShellEvent } from '../contract/index.ts';
import type { ShellPort } from '../shell-port.ts';
import type { BlobSource } from '../window-files.ts';

export interface ServiceOptions {
  /** The therapist's caseload folder; the demo lies in a folder `demo` inside it. */
  folder: string;
  port: ShellPort;
  shell: AppStatus['shell'];
  version: string;
  now: () => Date;
  emit: (event: ShellEvent) => void;
  /** Folder of the built demo caseload, or null where it is not shipped. */
  demoSource: string | null;
}

/** Scans waiting for the request that names them; more than this many means a runaway page. */
const maxStaged = 24;

const Therapist = { initials: '', clinic: '', credentials: '' };

/** Everything a handler may use. */
export class Services implements BlobSource {
  readonly options: ServiceOptions;
  caseload: Caseload | null = null;
  demo = false;
  wrongTries = 0;
  /** No unlocking before this instant, after several wrong passphrases. */
  waitUntil = 0;
  readonly measuring = new Map<string, AbortController>();
  #staged = new Map<string, Uint8Array>();
  #lastUse: number;

  constructor(options: ServiceOptions) {
    this.options = options;
    this.#lastUse = options.now().getTime();
  }

  get folder(): string {
    return this.demo ? this.demoFolder : this.options.folder;
  }
  get demoFolder(): string {
    return path.join(this.options.folder, 'demo');
  }
  get idleMs(): number {
    return this.options.now().getTime() - this.#lastUse;
  }

  /** The open caseload. @throws Refusal locked */
  need(): Caseload {
    if (!this.caseload) throw new Refusal('locked');
    return this.caseload;
  }

  doing(): Doing {
    return { at: this.options.now().toISOString(), by: this.therapist().initials || '–' };
  }

  therapist(): { initials: string; clinic: string; credentials: string } {
    return { ...Therapist, ...(this.caseload?.setting('therapist') as object | null) };
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
      lastBackupAt: (this.caseload?.setting('lastBackupAt') as string | null) ?? null,
      today: this.today(),
      version: this.options.version,
      shell: this.options.shell,
    };
  }

  /** Closes the caseload and forgets every staged byte. */
  lock(why: 'idle' | 'sleep' | 'asked'): void {
    for (const run of this.measuring.values()) run.abort();
    this.measuring.clear();
    this.#staged.clear();
    const wasOpen = this.caseload !== null;
    this.caseload?.close();
    this.caseload = null;
    if (wasOpen) this.options.emit({ kind: 'locked', why });
  }

  takeStaged(token: string): Uint8Array {
    const bytes = this.#staged.get(token);
    if (!bytes) throw new Refusal('not-found');
    this.#staged.delete(token);
    return bytes;
  }

  async removeDemo(): Promise<void> {
    if (this.demo) this.lock('asked');
    this.demo = false;
    await rm(this.demoFolder, { recursive: true, force: true });
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
