/** What the backup worker is asked and answers, and running it with progress and cancel. */
import { Worker } from 'node:worker_threads';
import type { TrailCheck } from '../../../db/index.ts';
import type { Manifest } from '../../../db/dump.ts';
import type { Salvage } from '../../../db/salvage.ts';
import { Refusal } from '../../contract/envelope.ts';
import { messages, type MessageCode } from '../../contract/messages.ts';

/** `identity` is lent to the worker, and zeroed when it ends. */
export type BackupJob = { identity: Uint8Array } & (
  | { kind: 'write'; folder: string; target: string; scratch: string; now: string }
  | { kind: 'unpack'; file: string; scratch: string }
  | { kind: 'manifests'; files: string[] }
  | { kind: 'check'; what: 'check' | 'start'; folder: string }
  | { kind: 'salvage'; folder: string; now: string }
  | { kind: 'holding'; files: string[]; clientId: string }
);

export type BackupAnswer =
  | { kind: 'write' | 'unpack'; manifest: Manifest }
  | { kind: 'manifests'; manifests: (Manifest | null)[] }
  | { kind: 'check'; file: string; trail: TrailCheck }
  | { kind: 'salvage'; salvaged: Salvage }
  /** For each file whether it holds the client; null when this key does not open it. */
  | { kind: 'holding'; holds: (boolean | null)[] };

export interface BackupHooks {
  /** 'writing' or 'checking', and the share of it that is done, 0 to 1. */
  onProgress?: ((stage: string, done: number) => void) | undefined;
  /** Aborting ends the worker at once; the promise rejects with Refusal 'cancelled'. */
  signal?: AbortSignal | undefined;
}

const WORKER = new URL(import.meta.url.endsWith('.ts') ? './backup-worker.ts' : './backup-worker.js', import.meta.url);

type Message =
  { progress: { stage: string; done: number } } | { answer: BackupAnswer } | { failed: string; words: string };

/** @throws Refusal */
export function runBackupJob(job: BackupJob, { onProgress, signal }: BackupHooks = {}): Promise<BackupAnswer> {
  return new Promise((resolve, reject) => {
    if (signal?.aborted) return reject(new Refusal('cancelled'));
    // Shared, not copied into the message: copies on the way could not be zeroed.
    const identity = new Uint8Array(new SharedArrayBuffer(job.identity.length));
    identity.set(job.identity);
    const worker = new Worker(WORKER, { workerData: { ...job, identity }, execArgv: ['--no-warnings'] });
    let settled = false;
    const finish = (act: () => void): void => {
      if (settled) return;
      settled = true;
      signal?.removeEventListener('abort', abort);
      identity.fill(0);
      void worker.terminate().then(act);
    };
    const abort = (): void => finish(() => reject(new Refusal('cancelled')));
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
    worker.on('exit', () => finish(() => reject(new Refusal('backup-failed'))));
  });
}
