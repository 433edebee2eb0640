/**
 * Changes the passphrase over and over until it is killed: of two passphrases, the one that is not in use. Says a line
 * before each change. Arguments: folder, the passphrase in use, the other one; `once` for a single change.
 */
import { writeSync } from 'node:fs';
import { rekeyCaseload } from '../../db/index.ts';

const [folder = '', first = '', second = '', times = ''] = process.argv.slice(2);
let [inUse, next] = [first, second];
for (;;) {
  writeSync(1, '.');
  const done = await rekeyCaseload({ folder, passphrase: inUse, next, now: new Date().toISOString(), workFactor: 4 });
  if (!done.ok) throw new Error(done.code);
  writeSync(1, '\n');
  if (times === 'once') break;
  [inUse, next] = [next, inUse];
}
