import { expect, test } from 'vitest';
import { keyChangeKilledAtEachStep } from '../../../build/torture/key-change-steps.ts';
import { keyChangeKillTest } from '../../../build/torture/key-change.ts';
import { peopleKilledAtEachStep } from '../../../build/torture/people/people-kill.ts';

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
