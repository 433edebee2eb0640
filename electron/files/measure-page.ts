import { Worker } from 'node:worker_threads';
import type { MeasureOptions } from '../../renderer/sample/measure/types.ts';
import { DECODE_CODES, DecodeError } from './decode-error.ts';
import type { DecodeCode } from './decode-error.ts';
import type { MeasuredPage, PageAnswer, PageJob, PageLook, ShownPage } from './page-job.ts';

export interface WorkerHooks {
  /** Told between stages: a plain word and the share done, 0 to 1. */
  onProgress?: (stage: string, done: number) => void;
  /** Aborting ends the worker at once; the promise rejects with the code 'cancelled'. */
  signal?: AbortSignal;
  /** The worker is ended after this time and the promise rejects with 'decode-timeout', ms. */
  timeoutMs?: number;
}

export type PageJobExtras = Partial<Pick<PageJob, 'limits' | 'pdfPage' | 'rawSize' | 'wantGray' | 'ignoreFileDpi'>>;

/** 100 million pixels take about ten seconds on a slow laptop; a minute means that something is wrong. */
const TIMEOUT_MS = 60_000;

/** The worker beside this file: its source under Node, its built form in the packaged app. */
const WORKER = new URL(import.meta.url.endsWith('.ts') ? './page-worker.ts' : './page-worker.js', import.meta.url);

/** A page makes some 40 MB of short-lived numbers: with room for them the collector copies none around. */
export const PAGE_WORKER_LIMITS = { maxYoungGenerationSizeMb: 96 };

function runInWorker(job: PageJob, hooks: WorkerHooks): Promise<PageAnswer> {
  const { signal, onProgress, timeoutMs = TIMEOUT_MS } = hooks;
  return new Promise((resolve, reject) => {
    if (signal?.aborted) return reject(new DecodeError('cancelled'));
    const worker = new Worker(WORKER, { workerData: job, resourceLimits: PAGE_WORKER_LIMITS });
    let settled = false;
    const finish = (act: () => void): void => {
      if (settled) return;
      settled = true;
      clearTimeout(timer);
      signal?.removeEventListener('abort', abort);
      void worker.terminate();
      act();
    };
    const timer = setTimeout(() => finish(() => reject(new DecodeError('decode-timeout'))), timeoutMs);
    const abort = (): void => finish(() => reject(new DecodeError('cancelled')));
    signal?.addEventListener('abort', abort);
    worker.on('message', (message: WorkerMessage) => {
      if ('progress' in message) onProgress?.(message.progress.stage, message.progress.done);
      else if ('answer' in message) finish(() => resolve(message.answer));
      else finish(() => reject(asError(message)));
    });
    worker.on('error', (error) => finish(() => reject(error instanceof Error ? error : new Error(String(error)))));
    worker.on('exit', () => finish(() => reject(new Error('the page worker ended without an answer'))));
  });
}

type WorkerMessage =
  { progress: { stage: string; done: number } } | { answer: PageAnswer } | { failed: DecodeCode | null; words: string };

function asError(message: { failed: DecodeCode | null; words: string }): Error {
  const code = DECODE_CODES.find((known) => known === message.failed);
  return code ? new DecodeError(code) : new Error(message.words);
}

/**
 * Decodes and measures one page in a worker thread.
 * Without a scale in `options` the file's own resolution is used, if it has a believable one.
 * @throws DecodeError for a file that cannot be read, a time-out, or an abort
 */
export async function measureInWorker(
  bytes: Uint8Array,
  options: MeasureOptions,
  hooks: WorkerHooks = {},
  extras: PageJobExtras = {},
): Promise<MeasuredPage> {
  const answer = await runInWorker({ kind: 'measure', bytes, options, ...extras }, hooks);
  if (answer.kind !== 'measure') throw new Error('the page worker answered another question');
  return answer;
}

/**
 * Decodes a file once to learn its format, upright size and resolution, and that it is whole.
 * @throws DecodeError
 */
export async function lookInWorker(
  bytes: Uint8Array,
  hooks: WorkerHooks = {},
  extras: PageJobExtras = {},
): Promise<PageLook> {
  const answer = await runInWorker({ kind: 'look', bytes, options: { scale: null }, ...extras }, hooks);
  if (answer.kind !== 'look') throw new Error('the page worker answered another question');
  return answer;
}

/**
 * A picture that a browser window can show: the file itself, or a PNG of a TIFF or PDF page.
 * @throws DecodeError
 */
export async function showInWorker(
  bytes: Uint8Array,
  hooks: WorkerHooks = {},
  extras: PageJobExtras = {},
): Promise<ShownPage> {
  const answer = await runInWorker({ kind: 'show', bytes, options: { scale: null }, ...extras }, hooks);
  if (answer.kind !== 'show') throw new Error('the page worker answered another question');
  return answer;
}
