import { expect, test } from 'vitest';
import { backupFuzz } from '../../../build/torture/backups.ts';
import { importTest } from '../../../build/torture/imports.ts';
import { trailTest } from '../../../build/torture/trail.ts';

test('mutated backup files are refused with a sentence and write nothing elsewhere (share)', async () => {
  const report = await backupFuzz(40, 11);
  expect(report).toMatchObject({ inputs: 40, faults: [] });
  expect(report.slowestMs).toBeLessThan(5000);
});

test('spoiled backups and client files change nothing that was there (share)', async () => {
  expect(await importTest(40, 5)).toMatchObject({ faults: [] });
}, 120_000);

test('tampering with a closed caseload is told, work is not (share)', async () => {
  const report = await trailTest(9, 3);
  expect(report).toMatchObject({ quiet: 18, faults: [] });
}, 120_000);
