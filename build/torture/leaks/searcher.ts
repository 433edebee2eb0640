/** One search of the disk for the words of all walks at once: those who ask meanwhile share the next one. */
import { Worker } from 'node:worker_threads';
import type { Found } from './search.ts';
import type { Searched } from './search-thread.ts';

export interface Searcher {
  /** Begins after it was asked for. @param pids whose open files without a name are read as well */
  look(pids: readonly number[]): Promise<Found>;
  /** Searches made. */
  count: number;
  stop(): Promise<unknown>;
}

export function searcher(what: Searched): Searcher {
  const thread = new Worker(new URL('search-thread.ts', import.meta.url), { workerData: what });
  const failed = new Promise<never>((_resolve, reject) => thread.on('error', reject));
  failed.catch(() => undefined);
  const sweep = (pids: readonly number[]) => {
    const found = new Promise<Found>((resolve) => thread.once('message', resolve));
    thread.postMessage(pids);
    return Promise.race([found, failed]);
  };
  let waiting: { pids: number[]; found: Promise<Found> } | null = null;
  let before: Promise<unknown> = Promise.resolve();
  const self: Searcher = {
    count: 0,
    look(pids) {
      if (!waiting) {
        const next = { pids: [] as number[], found: Promise.resolve<Found>({ holders: [], read: 0 }) };
        next.found = before.then(() => {
          waiting = null;
          self.count++;
          return sweep(next.pids);
        });
        before = next.found;
        waiting = next;
      }
      waiting.pids.push(...pids);
      return waiting.found;
    },
    stop: () => thread.terminate(),
  };
  return self;
}
