/** Runs in a worker thread: a page in, its measures out, then the next. Ended from outside by terminating the thread. */
import { parentPort } from 'node:worker_threads';
import {
  measurePage,
  measureSpiralSheet,
  type MeasureOptions,
  type PageResult,
} from '../../../renderer/measure/index.ts';
import { DecodeError } from '../decode/decode-error.ts';
import { decodePage, giveBack, pictureForWindow, pngOf } from '../decode/decode.ts';
import type { DecodedPage } from '../decode/decode.ts';
import type { PageAnswer, PageJob } from './page-job.ts';
import { startSecondThread } from './second-thread.ts';

const second = startSecondThread();

async function decoded(job: PageJob): Promise<DecodedPage> {
  if (!job.rawSize) return decodePage(job.bytes, { ...job.limits, page: job.pdfPage ?? 1 });
  const { width, height } = job.rawSize;
  if (job.bytes.length !== width * height) throw new DecodeError('unreadable-file');
  return { gray: { width, height, data: job.bytes }, format: 'png', fileDpi: null, width, height };
}

async function run(job: PageJob): Promise<PageAnswer> {
  const tell = (stage: string, done: number): void => parentPort?.postMessage({ progress: { stage, done } });
  tell('decode', 0);
  if (job.kind === 'show') return { kind: 'show', ...(await pictureForWindow(job.bytes, { page: job.pdfPage ?? 1 })) };
  const page = await decoded(job);
  const { gray, format, fileDpi, width, height } = page;
  if (job.kind === 'look') return { kind: 'look', format, fileDpi, width, height };
  if (job.kind === 'spiral') {
    const scale = fileDpi === null ? null : { pxPerMm: fileDpi / 25.4, source: 'file-dpi' as const };
    const result = measureSpiralSheet(gray, scale, job.seconds ?? { traced: null, free: null });
    const view = format === 'tiff' || format === 'pdf' ? await pngOf(gray) : null;
    giveBack(gray.data);
    return { kind: 'spiral', result, view, format, fileDpi, width, height };
  }
  const options = { ...job.options };
  // The file's own resolution is the last resort; what the therapist gave goes first.
  if (!options.scale && fileDpi !== null && !job.ignoreFileDpi)
    options.scale = { pxPerMm: fileDpi / 25.4, source: 'file-dpi' };
  const measured = (using: MeasureOptions): PageResult =>
    measurePage(gray, using, (stage, done) => tell(stage, done), second);
  const uncorrected = job.uncorrectedToo ? measured({ ...options, corrections: [] }) : null;
  const result = measured(options);
  if (!job.wantGray) giveBack(gray.data);
  return {
    kind: 'measure',
    result,
    uncorrected,
    format,
    fileDpi,
    width,
    height,
    gray: job.wantGray ? gray.data : null,
  };
}

parentPort?.on('message', async (job: PageJob) => {
  try {
    // Copied, not moved: sharp's buffers belong to the library and cannot be handed over.
    parentPort?.postMessage({ answer: await run(job) });
  } catch (error) {
    parentPort?.postMessage({ failed: error instanceof DecodeError ? error.code : null, words: String(error) });
  }
});
