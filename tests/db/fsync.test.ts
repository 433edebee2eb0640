import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { expect, test } from 'vitest';
import { newFolder, NOW, PASSPHRASE, QUICK } from './support.ts';

/** Calls of fsync and fdatasync while `saves` clients are saved, seen by strace; null where it cannot trace. */
function syncCalls(saves: number): number | null {
  const folder = newFolder();
  const log = path.join(folder, 'strace.txt');
  const script = `
    import { createCaseload } from ${JSON.stringify(path.resolve('db/index.ts'))};
    import { client } from ${JSON.stringify(path.resolve('tests/db/plain-facts.ts'))};
    const made = await createCaseload({ folder: ${JSON.stringify(path.join(folder, 'c'))}, passphrase: ${JSON.stringify(PASSPHRASE)}, now: ${JSON.stringify(NOW)}, workFactor: ${QUICK} });
    for (let n = 0; n < ${saves}; n++) made.caseload.put('client', client(), { at: ${JSON.stringify(NOW)}, by: 'MK' });
    process.kill(process.pid, 'SIGKILL');`;
  const node = [process.execPath, '--no-warnings', '--input-type=module', '-e', script];
  spawnSync('strace', ['-f', '-e', 'trace=fsync,fdatasync', '-o', log, ...node], { stdio: 'ignore', timeout: 60_000 });
  try {
    const text = readFileSync(log, 'utf8');
    return text.includes('SIGKILL') ? (text.match(/f(data)?sync\(/g) ?? []).length : null;
  } catch {
    return null;
  }
}

test('every save reaches the disk by a sync call of its own before it counts', (context) => {
  const none = syncCalls(0);
  const twenty = syncCalls(20);
  if (none === null || twenty === null) return context.skip('strace is not here or may not trace');
  expect(none).toBeGreaterThan(0);
  expect(twenty - none).toBeGreaterThanOrEqual(20);
}, 150_000);
