import { setFlagsFromString } from 'node:v8';
import { runInNewContext } from 'node:vm';

let collect: (() => void) | undefined;

/**
 * Frees the keys that nobody holds any more. Node's cryptography zeroes a key object when it is freed, and that is when
 * V8 collects it: after a lock this must not wait until memory is short. Takes a tenth of a second.
 */
export function freeKeys(): void {
  if (collect === undefined) {
    setFlagsFromString('--expose-gc');
    collect = runInNewContext('gc') as () => void;
  }
  collect();
}
