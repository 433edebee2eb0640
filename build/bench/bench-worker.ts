/** Times pages in a worker like the app's own: a heap that holds nothing else. Started by bench.ts only. */
import { parentPort, workerData } from 'node:worker_threads';
import { decodePage, giveBack } from '../../electron/files/decode/decode.ts';
import { startSecondThread } from '../../electron/files/measure/second-thread.ts';
import { measurePage } from '../../renderer/measure/measure-page.ts';

/** What bench.ts hands over. */
export interface BenchJob {
  files: Uint8Array[];
  dpi: number;
  warmUp: number;
  runs: number;
}

/** Times of one file, a number a run, ms. */
export interface BenchTimes {
  decode: number[];
  after: number[];
}

const { files, dpi, warmUp, runs } = workerData as BenchJob;
const second = startSecondThread();
const times: BenchTimes[] = files.map(() => ({ decode: [], after: [] }));
// All files in turns, so that what else the machine does falls on all alike. The first runs warm the compiler up.
for (let run = -warmUp; run < runs; run += 1)
  for (const [index, file] of files.entries()) {
    const start = performance.now();
    const { gray } = await decodePage(file);
    const middle = performance.now();
    measurePage(gray, { scale: { pxPerMm: dpi / 25.4, source: 'dpi' } }, undefined, second);
    const end = performance.now();
    // As the page worker does.
    giveBack(gray.data);
    if (run < 0) continue;
    times[index]!.decode.push(middle - start);
    times[index]!.after.push(end - middle);
  }
parentPort?.postMessage(times);
