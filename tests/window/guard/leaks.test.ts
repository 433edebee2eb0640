/** No word typed into the window reaches a file in the clear. The whole walk: `npm run torture -- --only leaks`. */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { expect, test } from '@playwright/test';
import { leakTest } from '../../../build/torture/leaks/index.ts';
import { search } from '../../../build/torture/leaks/search.ts';

test.skip(Boolean(process.env['FAIRHAND_TEST_SHELL']), 'this is about the browser shell');

test('the search finds a word in every encoding, wherever it begins', () => {
  const folder = mkdtempSync(path.join(tmpdir(), 'fairhand-search-'));
  const word = 'qzplanted';
  const swapped = Buffer.from(word, 'utf16le').swap16();
  const forms = [Buffer.from(word), Buffer.from(word, 'utf16le'), swapped];
  const wanted: string[] = [];
  for (const [n, form] of forms.entries()) {
    for (const lead of ['', 'a', 'ab', 'abc']) {
      const whole = Buffer.concat([Buffer.from(lead), form, Buffer.from('after it')]);
      for (const [kind, bytes] of [
        ['raw', whole],
        ['base64', Buffer.from(whole.toString('base64'))],
      ] as const) {
        const file = path.join(folder, `${n}-${lead}-${kind}`);
        writeFileSync(file, bytes);
        wanted.push(file);
      }
    }
  }
  writeFileSync(path.join(folder, 'other'), 'nothing of it');
  expect(search([folder], [word], 0).holders.sort()).toEqual(wanted.sort());
  expect(search([folder], [word], Date.now() + 60_000)).toEqual({ holders: [], read: 0 });
  rmSync(folder, { recursive: true });
});

test('three screens of 5 s each, the lock, the close, and a kill of window and main process leave no word', async () => {
  test.setTimeout(900_000);
  const report = await leakTest({
    walks: [
      { walk: 'few', ending: 'closed' },
      { walk: 'few', ending: 'both killed' },
    ],
    waitMs: 5000,
    atOnce: 2,
  });
  expect(report.faults).toEqual([]);
  expect(report.planted).toBe('3 of 3 found');
  expect(report.screens).toBeGreaterThanOrEqual(6);
  expect(report.fieldsWithWords).toBeGreaterThan(20);
  expect(report.filesRead).toBeGreaterThan(20);
});
