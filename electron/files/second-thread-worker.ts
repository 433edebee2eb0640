/** Runs in a worker thread of the page worker: does parts of a page until it is ended. */
import { workerData } from 'node:worker_threads';
import { serveSecondThread } from '../../renderer/sample/measure/image/wasm/second-thread.ts';
import type { Desk } from '../../renderer/sample/measure/image/wasm/second-thread.ts';

serveSecondThread(workerData as Desk);
