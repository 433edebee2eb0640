/** A page printed on paper leaves no copy of itself: `npm run torture -- --only printedOnPaper`. */
import { expect, test } from '@playwright/test';
import { canQueue } from '../../../build/torture/leaks/print-queue.ts';
import { printTest } from '../../../build/torture/leaks/printed.ts';

test.skip(Boolean(process.env['FAIRHAND_TEST_SHELL']), 'this is about the browser shell');
test.skip(!canQueue(), 'no print queue can be started here: it takes CUPS (cups-daemon), and root');

test('a page on its way to the printer lies in memory alone, and is gone soon after', async () => {
  test.setTimeout(300_000);
  const report = await printTest(['/tmp', '/dev/shm', '/var/tmp']);
  expect(report!.faults).toEqual([]);
  expect(report!.withWords).toBeGreaterThan(0);
  expect(report!.copySeconds).toBeLessThan(60);
});
