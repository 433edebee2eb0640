import { availableParallelism } from 'node:os';
import { SecondThread } from '../../../renderer/measure/index.ts';
import { startThread } from '../start-thread.ts';

/** A few lines of plain JavaScript, the same in the sources and in the packaged app. */
const WORKER = new URL('./second-thread-worker.js', import.meta.url);
/** It makes next to nothing of its own. */
const LIMITS = { maxOldGenerationSizeMb: 16, maxYoungGenerationSizeMb: 1 };

/**
 * Starts a second thread for measuring pages; it ends with the thread that started it. Null where the machine has one
 * processor only, or cannot run the stages that are shared.
 */
export function startSecondThread(): SecondThread | null {
  const second = availableParallelism() > 1 ? SecondThread.create() : null;
  if (!second) return null;
  const worker = startThread(WORKER, { workerData: second.desk, resourceLimits: LIMITS });
  // What happens to it is seen at the desk; it holds nothing that has to be waited for.
  worker.on('error', () => undefined);
  worker.unref();
  return second;
}
