/** Opens what stands behind the contract, for whichever shell asks. */
import { existsSync, readFileSync } from 'node:fs';
import path from 'node:path';
import type { Backend } from './backend.ts';
import type { ShellEvent } from './contract/index.ts';
import { dispatch } from './handlers/dispatch.ts';
import { Services } from './handlers/services.ts';
import { thisMachine } from './data-folder.ts';
import { stateFolder } from './files/trail-seal.ts';
import type { ShellPort } from './shell-port.ts';

/** An unattended caseload locks after this long without use, unless Settings say otherwise (10 minutes). */
export const IDLE_MS = 10 * 60_000;

/** How often it is asked whether an hourly backup is due. */
const BACKUP_LOOK_MS = 5 * 60_000;

/** How often the shell looks, in milliseconds: the lock comes at most this much later. */
const LOOK_MS = 15_000;

export interface BackendOptions {
  /** The caseload folder. */
  folder: string;
  port: ShellPort;
  shell: 'electron' | 'browser';
  emit(json: string): void;
  /** The folder that holds package.json and dist/: the repository, or the root of the package. */
  appRoot: string;
  now?: () => Date;
  /** Where the trail's second sealed note lies; the system's own place unless a test says otherwise. */
  state?: string | null;
}

/** The demo caseload that was built with the app, or null. */
export function demoSource(appRoot: string): string | null {
  const folder = path.join(appRoot, 'dist', 'demo');
  return existsSync(path.join(folder, 'caseload.db')) ? folder : null;
}

/** The version in package.json. */
export function appVersion(appRoot: string): string {
  const { version } = JSON.parse(readFileSync(path.join(appRoot, 'package.json'), 'utf8')) as { version: string };
  return version;
}

/** The lock is announced at least this long before it comes, in milliseconds. */
export const WARN_MS = 60_000;

/** Locks an unattended caseload, and says so a minute ahead. Answers how to stop looking. */
export function lockWhenIdle(
  services: Pick<Services, 'idleMs' | 'lock' | 'caseload'>,
  warn: (seconds: number) => void,
  idleMs: () => number = () => IDLE_MS,
): () => void {
  let warned = false;
  const timer = setInterval(() => {
    if (!services.caseload) return;
    const left = idleMs() - services.idleMs;
    if (left <= 0) services.lock('idle');
    const soon = left > 0 && left <= WARN_MS + LOOK_MS;
    if (soon && !warned) warn(Math.ceil(left / 1000));
    warned = soon;
  }, LOOK_MS);
  timer.unref();
  return () => clearInterval(timer);
}

/** What nobody has to think of: the hourly backup and the weekly check. A failure shows at the next look or in the list. */
async function lookAfter(services: Services): Promise<void> {
  await services.lookAfterBackups().catch(() => undefined);
  await services.weeklyCheck().catch(() => undefined);
}

/** Opens the services; the caseload itself opens when the therapist unlocks it. */
export function openBackend(options: BackendOptions): Backend & Pick<Services, 'lock' | 'told'> {
  const services = new Services({
    folder: options.folder,
    port: options.port,
    shell: options.shell,
    version: appVersion(options.appRoot),
    appRoot: options.appRoot,
    now: options.now ?? (() => new Date()),
    emit: (event) => options.emit(JSON.stringify(event)),
    demoSource: demoSource(options.appRoot),
    state: options.state === undefined ? stateFolder(thisMachine()) : options.state,
  });
  const stopIdle = lockWhenIdle(
    services,
    (seconds) => options.emit(JSON.stringify({ kind: 'locking-soon', seconds } satisfies ShellEvent)),
    () => services.lockMs,
  );
  const backups = setInterval(() => void lookAfter(services), BACKUP_LOOK_MS);
  backups.unref();
  return {
    call: (json) => dispatch(services, json),
    readBlob: (id) => services.readBlob(id),
    stageBlob: (bytes) => services.stageBlob(bytes),
    lock: (why) => services.lock(why),
    told: () => services.told(),
    offer: (file) => services.offer(file),
    async close() {
      stopIdle();
      clearInterval(backups);
      await services.lookAfterBackups(true).catch(() => undefined);
      services.lock('asked');
    },
  };
}
