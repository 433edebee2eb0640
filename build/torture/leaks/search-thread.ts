/** Searches away from the walks, so that none waits while the disk is read. */
import path from 'node:path';
import { parentPort, workerData } from 'node:worker_threads';
import { search, searchNameless } from './search.ts';

export interface Searched {
  places: readonly string[];
  words: readonly string[];
  since: number;
  /** Files that may hold the words: what the user saved. Matched with the path below that folder. */
  passed: RegExp;
  below: string;
}

const { places, words, since, passed, below } = workerData as Searched;
const clean = new Map<string, string>();

parentPort!.on('message', (pids: number[]) => {
  const named = search(places, words, since, (file) => passed.test(path.relative(below, file)), clean);
  const nameless = process.platform === 'linux' ? searchNameless(pids, words) : { holders: [], read: 0 };
  parentPort!.postMessage({ holders: [...named.holders, ...nameless.holders], read: named.read + nameless.read });
});
