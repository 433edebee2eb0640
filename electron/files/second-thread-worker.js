/**
 * Runs in a worker thread of the page worker: does parts of a page, one order after the other, until it is ended.
 * The desk is described in renderer/sample/measure/image/wasm/second-thread.ts.
 */
import { workerData } from 'node:worker_threads';

const { module, memory, stages, flags, numbers } = workerData;
const [GIVEN, DONE, READY] = [0, 1, 2];
/** Looks at the flag before falling asleep: within a page the next order mostly comes at once. */
const LOOKS = 20_000;

const { exports } = new WebAssembly.Instance(module, { env: { memory } });
Atomics.store(flags, READY, 1);
for (let done = 0; ; done += 1) {
  for (let look = 0; look < LOOKS && Atomics.load(flags, GIVEN) === done; look += 1);
  Atomics.wait(flags, GIVEN, done);
  const [stage, count] = numbers;
  numbers[0] = exports[stages[stage]](...numbers.subarray(2, 2 + count)) ?? 0;
  Atomics.store(flags, DONE, done + 1);
  Atomics.notify(flags, DONE);
}
