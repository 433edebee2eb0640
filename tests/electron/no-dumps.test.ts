import { execFileSync } from 'node:child_process';
import path from 'node:path';
import { expect, test } from 'vitest';

test.runIf(process.platform === 'linux')('no memory of this process or of its children goes into a core dump', () => {
  const file = path.resolve(import.meta.dirname, '../../electron/no-dumps.ts');
  const script = `
    import { execFileSync } from 'node:child_process';
    import { readFileSync } from 'node:fs';
    import { leaveMemoryOutOfDumps } from ${JSON.stringify(file)};
    const read = () => readFileSync('/proc/self/coredump_filter', 'utf8').trim();
    const before = read();
    leaveMemoryOutOfDumps();
    const child = execFileSync('cat', ['/proc/self/coredump_filter'], { encoding: 'utf8' }).trim();
    console.log(JSON.stringify({ before, own: read(), child }));`;
  const said = execFileSync(process.execPath, ['--no-warnings', '--input-type=module', '-e', script], {
    encoding: 'utf8',
  });
  const { own, child } = JSON.parse(said) as Record<string, string>;
  expect([Number.parseInt(own!, 16), Number.parseInt(child!, 16)]).toEqual([0, 0]);
});
