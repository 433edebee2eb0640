/** A seeded share of the spoiled files of `npm run torture`. */
import { expect, test } from 'vitest';
import { fuzz } from '../../../build/torture/fuzz/index.ts';

test('spoiled pictures, PDFs, client, rule and findings files give a sentence: no crash, no hang, no write elsewhere', async () => {
  const report = await fuzz(300, 11);
  expect(report.faults).toEqual([]);
  expect(report.inputs).toBe(300);
  for (const [kind, { outcomes }] of Object.entries(report.kinds)) {
    // Both must be met, or the spoiling is too gentle or too rough to find anything.
    expect(outcomes['read'] ?? 0, kind).toBeGreaterThan(0);
    expect(Object.keys(outcomes).length, kind).toBeGreaterThan(1);
  }
}, 600_000);
