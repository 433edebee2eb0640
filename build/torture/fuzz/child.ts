/**
 * Reads spoiled inputs one after the other, in a process of its own that may end badly.
 * Arguments: kind, seed, first input, inputs, folder. Says before each which it is, and after it what came of it.
 */
import { writeSync } from 'node:fs';
import { seeded } from '../random.ts';
import { readerOf, type Kind } from './readers.ts';

const [kind = '', seed = '', first = '', inputs = '', folder = ''] = process.argv.slice(2);
const say = (line: unknown): void => void writeSync(1, `${JSON.stringify(line)}\n`);

const read = await readerOf(kind as Kind, folder);
say({ ready: true });
for (let n = Number(first); n < Number(inputs); n++) {
  say({ begin: n });
  // Its own seed for each input: one that failed can be run again by itself.
  const random = seeded(Number(seed) * 100_003 + n);
  const began = process.cpuUsage();
  let outcome = '';
  let fault = '';
  try {
    outcome = await read(random);
  } catch (error) {
    fault = error instanceof Error ? `${error.name}: ${error.message}`.slice(0, 300) : String(error).slice(0, 300);
  }
  if ('polluted' in Object.prototype) fault = 'a prototype was changed';
  if ('ran' in globalThis) fault = 'script ran';
  // Time of the processor, all threads: what else the machine does must not count.
  const { user, system } = process.cpuUsage(began);
  say({ end: n, outcome, fault, ms: Math.round((user + system) / 1000) });
}
say({ done: true });
