/** Runs in a worker thread: one recording in, its measures and its page out. Half an hour of ink takes seconds. */
import { parentPort, workerData } from 'node:worker_threads';
import { drawInk, InkRefusal, inkStrokes, measureInk } from '../../../renderer/ink/index.ts';
import { hitsByLine } from '../../../renderer/logic/sample/ink-hits.ts';
import { measurePage } from '../../../renderer/measure/index.ts';
import type { InkAnswerMessage, InkJob, MeasuredInk } from './ink-job.ts';
import { inkOfRecording, pngOfPage } from './recorded-ink.ts';

async function run(job: InkJob): Promise<MeasuredInk> {
  const ink = inkOfRecording(job.recording, job.text, job.bytes);
  const isPage = job.recording.task === 'writing' || job.recording.task === 'loops';
  const drawn = isPage ? drawInk(ink) : null;
  const png = drawn && job.draw ? await pngOfPage(drawn) : null;
  // Words of the page tell which contacts belong together, where the file does not group them.
  const boxes =
    drawn && job.recording.task === 'writing' && ink.words.length === 0
      ? measurePage(
          { width: drawn.width, height: drawn.height, data: drawn.data },
          { scale: { pxPerMm: drawn.dpi / 25.4, source: 'dpi' } },
        ).lines.flatMap(({ words }) => words.map(({ box }) => box))
      : [];
  const { words: _words, ...told } = measureInk(ink, { page: drawn && { boxes, origin: drawn.origin } });
  const { width, height, dpi } = drawn ?? { width: 0, height: 0, dpi: 0 };
  const band = job.recording.cues?.bandMm ?? null;
  const lines = band === null ? undefined : hitsByLine(inkStrokes(ink), job.recording.notes, band);
  return { lines, told: told as unknown as MeasuredInk['told'], page: png && { png, width, height, dpi } };
}

try {
  parentPort?.postMessage({ measured: await run(workerData as InkJob) } satisfies InkAnswerMessage);
} catch (error) {
  const answer: InkAnswerMessage =
    error instanceof InkRefusal ? { refused: error.code } : { failed: error instanceof Error ? error.name : 'error' };
  parentPort?.postMessage(answer);
}
