import { expect, test } from 'vitest';
import { backupFuzz, backupKillTest } from '../../build/torture/backups.ts';
import { importTest } from '../../build/torture/imports.ts';
import { keyChangeKilledAtEachStep } from '../../build/torture/key-change-steps.ts';
import { keyChangeKillTest } from '../../build/torture/key-change.ts';
import { killTest } from '../../build/torture/kill.ts';
import { memoryAfterLock } from '../../build/torture/memory/index.ts';
import { migrationKillTest } from '../../build/torture/migration.ts';
import { peopleKilledAtEachStep } from '../../build/torture/people/people-kill.ts';
import { penKillTest } from '../../build/torture/pen-kill.ts';
import { statementsOf } from '../../build/torture/next-migration.ts';
import { trailTest } from '../../build/torture/trail.ts';
import { readMigrations } from '../../db/migrate.ts';

test('a kill in the middle of typing loses nothing that was saved (seeded share of npm run torture)', async () => {
  const report = await killTest(3, 20260304);
  expect(report).toMatchObject({ kills: 3, lost: 0, faults: [] });
  expect(report.saves).toBeGreaterThan(3);
});

test('a kill in the middle of a line costs at most a second of ink', async () => {
  const report = await penKillTest(3, 20260304);
  expect(report).toMatchObject({ kills: 3, faults: [] });
  expect(report.lostSeconds).toBeLessThanOrEqual(1);
}, 60_000);

test('a migration killed at a statement leaves the file as it was (share)', async () => {
  const report = await migrationKillTest(20);
  expect(report.faults).toEqual([]);
  expect(report.kills).toBeGreaterThanOrEqual(2);
});

test('the kill test sees every statement of the shipped migrations', () => {
  for (const { sql, name } of readMigrations()) {
    const statements = statementsOf(sql);
    expect(statements.join('').length, name).toBeGreaterThan(sql.replace(/\s/g, '').length * 0.9);
    for (const statement of statements) expect(statement, name).toMatch(/(CREATE|INSERT|UPDATE|DROP|ALTER|DELETE)/);
  }
});

test('a change of the key killed in the middle loses nothing, and one passphrase opens what is left (share)', async () => {
  const report = await keyChangeKillTest(3, 20260304);
  expect(report).toMatchObject({ kills: 3, faults: [] });
}, 120_000);

test('a change of the key killed before single steps on the disk loses nothing (share)', async (context) => {
  const report = await keyChangeKilledAtEachStep(16);
  if (report === null) return context.skip('strace is not here or may not trace');
  expect(report).toMatchObject({ faults: [] });
  expect(report.kills).toBeGreaterThan(1);
}, 240_000);

test('adding and removing a person killed before single steps lets in who is on the list, and loses nothing (share)', async (context) => {
  const report = await peopleKilledAtEachStep(45);
  if (report === null) return context.skip('strace is not here or may not trace');
  expect(report).toMatchObject({ faults: [] });
  expect(report.kills).toBeGreaterThan(2);
}, 240_000);

test('a backup or restore killed in the middle leaves a caseload that opens and no half backup (share)', async () => {
  const report = await backupKillTest(2, 7);
  expect(report).toMatchObject({ kills: 2, faults: [] });
});

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
