import { expect, test } from 'vitest';
import { backupKillTest } from '../../../build/torture/backups.ts';
import { killTest } from '../../../build/torture/kill.ts';
import { migrationKillTest } from '../../../build/torture/migration.ts';
import { penKillTest } from '../../../build/torture/pen-kill.ts';
import { statementsOf } from '../../../build/torture/next-migration.ts';
import { readMigrations } from '../../../db/migrate.ts';

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

test('a backup or restore killed in the middle leaves a caseload that opens and no half backup (share)', async () => {
  const report = await backupKillTest(2, 7);
  expect(report).toMatchObject({ kills: 2, faults: [] });
});
