import { InkRefusal } from '../../../renderer/ink/index.ts';
import type { InkRefusalCode } from '../../../renderer/ink/index.ts';
import type { InkAnswerMessage, InkJob, MeasuredInk } from './ink-job.ts';
import { startThread } from '../start-thread.ts';

/** The worker beside this file: its source under Node, its built form in the packaged app. */
const WORKER = new URL(import.meta.url.endsWith('.ts') ? './ink-worker.ts' : './ink-worker.js', import.meta.url);

/** An hour of ink at 240 Hz takes a quarter of this on a slow laptop. */
const TIMEOUT_MS = 120_000;

/**
 * Measures and draws one recording in a worker thread; the thread ends with it.
 * @param signal aborting ends the thread at once
 * @throws InkRefusal for an ink file that is refused; Error where the thread failed, took too long or was ended
 */
export function measureInkInWorker(job: InkJob, signal?: AbortSignal): Promise<MeasuredInk> {
  return new Promise((resolve, reject) => {
    const thread = startThread(WORKER, { workerData: job });
    const end = (act: () => void): void => {
      clearTimeout(timer);
      signal?.removeEventListener('abort', abort);
      void thread.terminate();
      act();
    };
    const abort = (): void => end(() => reject(new Error('the ink worker was ended')));
    const timer = setTimeout(() => end(() => reject(new Error('the ink worker took too long'))), TIMEOUT_MS);
    signal?.addEventListener('abort', abort);
    thread.once('message', (message: InkAnswerMessage) =>
      end(() => {
        if ('measured' in message) resolve(message.measured);
        else if ('refused' in message) reject(new InkRefusal(message.refused as InkRefusalCode));
        else reject(new Error('the ink worker failed'));
      }),
    );
    thread.once('error', (error) => end(() => reject(error)));
  });
}
