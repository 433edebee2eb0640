import type { Worker } from 'node:worker_threads';
import type { MeasureOptions, PrintedOn, SpiralSeconds } from '../../../renderer/measure/index.ts';
import { DECODE_CODES, DecodeError } from '../decode/decode-error.ts';
import type { DecodeCode } from '../decode/decode-error.ts';
import type { MeasuredPage, PageAnswer, PageJob, PageLook, ReturnedPage, ShownPage, SpiralPage } from './page-job.ts';
import { startThread } from '../start-thread.ts';

export interface WorkerHooks {
  /** Told between stages: a plain word and the share done, 0 to 1. */
  onProgress?: (stage: string, done: number) => void;
  /** Aborting ends the worker at once; the promise rejects with the code 'cancelled'. */
  signal?: AbortSignal;
  /** The worker is ended after this time and the promise rejects with 'decode-timeout', ms. */
  timeoutMs?: number;
  /** The worker is ended after this much processor time of its thread, with the same code, ms. */
  cpuMs?: number;
}

export type PageJobExtras = Partial<
  Pick<PageJob, 'limits' | 'pdfPage' | 'rawSize' | 'uncorrectedToo' | 'wantGray' | 'ignoreFileDpi'>
>;

/** 100 million pixels take about ten seconds on a slow laptop; a minute means that something is wrong. */
const TIMEOUT_MS = 60_000;
/**
 * Processor time of a file that is looked at or shown, and of one that is measured as well, ms. A color scan of A4 at
 * 600 dpi in a PDF took over 12 s on a busy slow machine. A file made to keep a core busy ends here.
 */
const CPU_MS = { look: 25_000, show: 25_000, measure: 60_000, spiral: 60_000, printed: 60_000 };
const CPU_LOOK_MS = 250;

/** The worker beside this file: its source under Node, its built form in the packaged app. */
const WORKER = new URL(import.meta.url.endsWith('.ts') ? './page-worker.ts' : './page-worker.js', import.meta.url);

/** A page makes some 40 MB of short-lived numbers: with room for them the collector copies none around. */
export const PAGE_WORKER_LIMITS = { maxYoungGenerationSizeMb: 96 };
/** A worker waits this long for the next page: a correction measures anew, and a warm one takes a fifth of the time. */
const KEEP_MS = 60_000;

/** A worker thread with whoever waits for its next word. */
interface PageWorker {
  thread: Worker;
  hear: (message: WorkerMessage) => void;
  fail: (error: Error) => void;
}

/** The worker that waits for a page, with what ends it. */
let waiting: { worker: PageWorker; timer: NodeJS.Timeout } | null = null;

function takeWorker(): PageWorker {
  if (waiting) {
    const { worker, timer } = waiting;
    waiting = null;
    clearTimeout(timer);
    worker.thread.ref();
    return worker;
  }
  const thread = startThread(WORKER, { resourceLimits: PAGE_WORKER_LIMITS });
  const worker: PageWorker = { thread, hear: () => undefined, fail: () => undefined };
  // Heard by whose turn it is: a thread that lost its last listener would no longer keep the program waiting for it.
  thread.on('message', (message: WorkerMessage) => worker.hear(message));
  thread.on('error', (error) => worker.fail(error instanceof Error ? error : new Error(String(error))));
  thread.on('exit', () => worker.fail(new Error('the page worker ended without an answer')));
  return worker;
}

function keepWorker(worker: PageWorker): void {
  endPageWorker();
  // Neither keeps the program running.
  const timer = setTimeout(endPageWorker, KEEP_MS).unref();
  worker.thread.unref();
  const kept = { worker, timer };
  waiting = kept;
  worker.hear = () => undefined;
  worker.fail = () => {
    if (waiting === kept) waiting = null;
  };
}

/** Ends the waiting worker and with it what its memory holds of the last page: when the caseload is locked. */
export function endPageWorker(): void {
  if (!waiting) return;
  clearTimeout(waiting.timer);
  void waiting.worker.thread.terminate();
  waiting = null;
}

function runInWorker(job: PageJob, hooks: WorkerHooks): Promise<PageAnswer> {
  const { signal, onProgress, timeoutMs = TIMEOUT_MS, cpuMs = CPU_MS[job.kind] } = hooks;
  return new Promise((resolve, reject) => {
    if (signal?.aborted) return reject(new DecodeError('cancelled'));
    const worker = takeWorker();
    let settled = false;
    /** @param isIdle the worker has answered and can take another page */
    const finish = (isIdle: boolean, act: () => void): void => {
      if (settled) return;
      settled = true;
      clearTimeout(timer);
      clearInterval(clock);
      signal?.removeEventListener('abort', abort);
      if (isIdle) keepWorker(worker);
      else void worker.thread.terminate();
      act();
    };
    const tooLong = () => finish(false, () => reject(new DecodeError('decode-timeout')));
    const timer = setTimeout(tooLong, timeoutMs);
    // A thread that has not begun yet tells nothing, and has used none.
    const before = worker.thread.cpuUsage().catch(() => ({ user: 0, system: 0 }));
    const look = async (): Promise<void> => {
      const { user, system } = await worker.thread.cpuUsage(await before);
      if ((user + system) / 1000 > cpuMs) tooLong();
    };
    const clock = setInterval(() => void look().catch(() => undefined), CPU_LOOK_MS);
    const abort = (): void => finish(false, () => reject(new DecodeError('cancelled')));
    signal?.addEventListener('abort', abort);
    worker.hear = (message) => {
      if ('progress' in message) onProgress?.(message.progress.stage, message.progress.done);
      else if ('answer' in message) finish(true, () => resolve(message.answer));
      else finish(message.failed !== null, () => reject(asError(message)));
    };
    worker.fail = (error) =>
      finish(false, () =>
        reject((error as { code?: string }).code === 'ERR_WORKER_OUT_OF_MEMORY' ? new DecodeError('too-large') : error),
      );
    worker.thread.postMessage(job);
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

/**
 * Decodes a scan of our sheet of spirals and measures it.
 * @throws DecodeError
 */
export async function spiralInWorker(
  bytes: Uint8Array,
  seconds: SpiralSeconds,
  hooks: WorkerHooks = {},
  extras: PageJobExtras = {},
): Promise<SpiralPage> {
  const answer = await runInWorker({ kind: 'spiral', bytes, options: { scale: null }, seconds, ...extras }, hooks);
  if (answer.kind !== 'spiral') throw new Error('the page worker answered another question');
  return answer;
}

/**
 * Decodes a scan of a log or practice page of ours and reads it.
 * @param printedOn what is printed on practice pages, by their codes
 * @throws DecodeError
 */
export async function returnedInWorker(
  bytes: Uint8Array,
  printedOn: Readonly<Record<string, PrintedOn>>,
  extras: PageJobExtras = {},
): Promise<ReturnedPage> {
  const answer = await runInWorker({ kind: 'printed', bytes, options: { scale: null }, printedOn, ...extras }, {});
  if (answer.kind !== 'printed') throw new Error('the page worker answered another question');
  return answer;
}
