import { setFlagsFromString } from 'node:v8';
import { Worker, type WorkerOptions } from 'node:worker_threads';

let steady = false;

/**
 * Starts a worker thread of the app.
 *
 * Node runs our TypeScript sources through WebAssembly, once a thread. V8 13.6 compiles a way out of WebAssembly anew
 * after its thousandth call, and two threads that drop the old one at the same time take the whole program down
 * ("Check failed: jit_page.has_value()", in WasmImportWrapperCache::Free). So nothing is compiled anew in our threads.
 * @param file its source under Node, its built form in the packaged app
 */
export function startThread(file: URL, options?: WorkerOptions): Worker {
  if (!steady && file.pathname.endsWith('.ts')) {
    steady = true;
    setFlagsFromString('--wasm-wrapper-tiering-budget=2000000000');
  }
  return new Worker(file, options);
}
