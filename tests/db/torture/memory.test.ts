import { expect, test } from 'vitest';
import { memoryAfterLock } from '../../../build/torture/memory/index.ts';

test.runIf(process.platform === 'linux')(
  'after the lock no byte of the key is in memory, seen from another process',
  async () => {
    // With people who have keys of their own; `npm run torture` looks at one sign-in for all too.
    const report = await memoryAfterLock(true);
    expect(report.faults).toEqual([]);
    // The looking works: what is open is found.
    expect(report.found['name of a client']!.open).toBeGreaterThan(0);
    expect(report.found['secret of the key file']!.open).toBeGreaterThan(0);
    expect(report.megabytes).toBeGreaterThan(50);
  },
  120_000,
);
