/** Runs in a worker thread: a page in, its measures out, then the next. Ended from outside by terminating the thread. */
import { createHash } from 'node:crypto';
import { parentPort } from 'node:worker_threads';
import { measureRead, measureSpiralSheet, readPage, readPrintedPage } from '../../../renderer/measure/index.ts';
import type { MeasureOptions, PageResult, ReadPage } from '../../../renderer/measure/index.ts';
import { DecodeError } from '../decode/decode-error.ts';
import { decodePage, giveBack, pngOf } from '../decode/decode.ts';
import type { DecodedPage } from '../decode/decode.ts';
import { isShowable, MIME_OF } from '../decode/picture-header.ts';
import { scaleOfFile } from './page-job.ts';
import type { LogField, PageAnswer, PageJob, ReturnedPage } from './page-job.ts';
import { startSecondThread } from './second-thread.ts';

const second = startSecondThread();

/**
 * The page that came last: a picture is looked at, measured and corrected one after the other, and is decoded once. It
 * goes when another comes, and with the worker.
 */
let last: { of: string; page: DecodedPage; read: { of: string; page: ReadPage } | null } | null = null;

async function decoded(job: PageJob): Promise<NonNullable<typeof last>> {
  const { width, height } = job.rawSize ?? { width: 0, height: 0 };
  const of = `${createHash('sha256').update(job.bytes).digest('hex')} ${job.pdfPage ?? 1} ${width} ${height} ${JSON.stringify(job.limits ?? {})}`;
  if (last?.of === of) return last;
  if (last) giveBack(last.page.gray.data);
  last = null;
  if (job.rawSize && job.bytes.length !== width * height) throw new DecodeError('unreadable-file');
  const page: DecodedPage = job.rawSize
    ? { gray: { width, height, data: job.bytes }, format: 'png', fileDpi: null, width, height }
    : await decodePage(job.bytes, { ...job.limits, page: job.pdfPage ?? 1 });
  return (last = { of, page, read: null });
}

async function run(job: PageJob): Promise<PageAnswer> {
  const tell = (stage: string, done: number): void => parentPort?.postMessage({ progress: { stage, done } });
  tell('decode', 0);
  const now = await decoded(job);
  const { gray, format, fileDpi, width, height } = now.page;
  if (job.kind === 'show')
    return { kind: 'show', ...(isShowable(format) ? { mime: MIME_OF[format], bytes: job.bytes } : await pngOf(gray)) };
  if (job.kind === 'look') return { kind: 'look', format, fileDpi, width, height };
  if (job.kind === 'spiral') {
    // Its stages take the pixels that a read page was lent.
    now.read = null;
    const result = measureSpiralSheet(gray, scaleOfFile(fileDpi), job.seconds ?? { traced: null, free: null });
    const view = isShowable(format) ? null : await pngOf(gray);
    return { kind: 'spiral', result, view, format, fileDpi, width, height };
  }
  if (job.kind === 'printed') {
    now.read = null;
    const result = await withPictures(readPrintedPage(gray, scaleOfFile(fileDpi), job.printedOn ?? {}));
    const view = isShowable(format) || result.kind !== 'practice' ? null : await pngOf(gray);
    return { kind: 'printed', result, view, format, fileDpi, width, height };
  }
  const options = { ...job.options };
  // What the therapist gave goes before what the file tells.
  if (!options.scale && !job.ignoreFileDpi) options.scale = scaleOfFile(fileDpi);
  const of = JSON.stringify([options.scale, options.quarterTurns ?? 0]);
  if (now.read?.of !== of) {
    now.read = null;
    now.read = { of, page: readPage(gray, options, tell, second) };
  }
  const { page } = now.read;
  const measured = (using: MeasureOptions): PageResult => measureRead(page, using, tell);
  const uncorrected = job.uncorrectedToo ? measured({ ...options, corrections: [] }) : null;
  const result = measured(options);
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

async function withPictures(read: ReturnType<typeof readPrintedPage>): Promise<ReturnedPage['result']> {
  if (read.kind !== 'log') return read;
  const fields: LogField[] = [];
  for (const { part, ...field } of read.fields)
    fields.push({ ...field, picture: part ? (await pngOf(part)).bytes : null });
  return { ...read, fields };
}

parentPort?.on('message', async (job: PageJob) => {
  try {
    // Copied, not moved: sharp's buffers belong to the library and cannot be handed over.
    parentPort?.postMessage({ answer: await run(job) });
  } catch (error) {
    parentPort?.postMessage({ failed: error instanceof DecodeError ? error.code : null, words: String(error) });
  }
});
