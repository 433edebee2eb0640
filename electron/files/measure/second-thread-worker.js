/**
 * Runs in a worker thread of the page worker: does parts of a page, one order after the other, until it is ended.
 * The desk is described in renderer/measure/image/wasm/thread-port.ts.
 */
import { workerData } from 'node:worker_threads';

const { module, memory, stages, flags, places, looks, numbers } = workerData;
const { given, done, ready } = places;

const { exports } = new WebAssembly.Instance(module, { env: { memory } });
Atomics.store(flags, ready, 1);
for (let orders = 0; ; orders += 1) {
  for (let look = 0; look < looks && Atomics.load(flags, given) === orders; look += 1);
  // A wake-up of the order before may come late: it is no order.
  while (Atomics.load(flags, given) === orders) Atomics.wait(flags, given, orders);
  const [stage, count] = numbers;
  numbers[0] = exports[stages[stage]](...numbers.subarray(2, 2 + count)) ?? 0;
  Atomics.store(flags, done, orders + 1);
  Atomics.notify(flags, done);
}
