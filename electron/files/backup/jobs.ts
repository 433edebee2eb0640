/** What the backup worker is asked and answers, and running it with progress and cancel. */
import type { TrailCheck } from '../../../db/index.ts';
import type { Manifest } from '../../../db/dump.ts';
import type { Salvage } from '../../../db/salvage.ts';
import { Refusal } from '../../contract/envelope.ts';
import { messages, type MessageCode } from '../../contract/messages.ts';
import { startThread } from '../start-thread.ts';

/** `identity` is lent to the worker, and zeroed when it ends. `stop`, in shared memory, is 1 when it was cancelled. */
export type BackupJob = { identity: Uint8Array; stop?: Int32Array } & (
  | { kind: 'write'; folder: string; target: string; scratch: string; now: string; pictures: string | null }
  | { kind: 'unpack'; file: string; scratch: string }
  | { kind: 'manifests'; files: string[] }
  | { kind: 'check'; what: 'check' | 'start'; folder: string }
  | { kind: 'salvage'; folder: string; now: string }
  | { kind: 'holding'; files: string[]; clientIds: readonly string[] }
);

export type BackupAnswer =
  | { kind: 'write' | 'unpack'; manifest: Manifest }
  | { kind: 'manifests'; manifests: (Manifest | null)[] }
  | { kind: 'check'; file: string; trail: TrailCheck }
  | { kind: 'salvage'; salvaged: Salvage }
  /** For each file whether it holds one of the clients; null when this key does not open it. */
  | { kind: 'holding'; holds: (boolean | null)[] };

export interface BackupHooks {
  /** 'writing' or 'checking', and the share of it that is done, 0 to 1. */
  onProgress?: ((stage: string, done: number) => void) | undefined;
  /** Aborting ends the worker at its next block; the promise rejects with Refusal 'cancelled' when it has ended. */
  signal?: AbortSignal | undefined;
}

const WORKER = new URL(import.meta.url.endsWith('.ts') ? './backup-worker.ts' : './backup-worker.js', import.meta.url);

type Message =
  { progress: { stage: string; done: number } } | { answer: BackupAnswer } | { failed: string; words: string };

/**
 * A worker ends by itself, with its files closed: a thread that is ended from outside in the middle of a call into
 * SQLite can take the whole program with it. Only one that does not end is, after this time, ms.
 */
const END_MS = 10_000;

/** @throws Refusal */
export function runBackupJob(job: BackupJob, { onProgress, signal }: BackupHooks = {}): Promise<BackupAnswer> {
  return new Promise((resolve, reject) => {
    if (signal?.aborted) return reject(new Refusal('cancelled'));
    // Shared, not copied into the message: copies on the way could not be zeroed.
    const identity = new Uint8Array(new SharedArrayBuffer(job.identity.length));
    identity.set(job.identity);
    const stop = new Int32Array(new SharedArrayBuffer(4));
    const worker = startThread(WORKER, { workerData: { ...job, identity, stop }, execArgv: ['--no-warnings'] });
    let settled = false;
    let ended = false;
    const finish = (act: () => void): void => {
      if (settled) return;
      settled = true;
      signal?.removeEventListener('abort', abort);
      const end = () => {
        identity.fill(0);
        act();
      };
      if (ended) return end();
      const late = setTimeout(() => void worker.terminate(), END_MS);
      worker.once('exit', () => {
        clearTimeout(late);
        end();
      });
    };
    const abort = (): void => {
      Atomics.store(stop, 0, 1);
      finish(() => reject(new Refusal('cancelled')));
    };
    signal?.addEventListener('abort', abort);
    worker.on('message', (message: Message) => {
      if ('progress' in message) onProgress?.(message.progress.stage, message.progress.done);
      else if ('answer' in message) finish(() => resolve(message.answer));
      else {
        const known = message.failed in messages && message.failed !== 'internal';
        const code = known ? (message.failed as MessageCode) : 'backup-failed';
        finish(() => reject(Object.assign(new Refusal(code), { cause: message.words })));
      }
    });
    worker.on('error', (cause) => finish(() => reject(Object.assign(new Refusal('backup-failed'), { cause }))));
    worker.on('exit', () => {
      ended = true;
      finish(() => reject(new Refusal('backup-failed')));
    });
  });
}
