/** 5,001 clients: only the rows in sight are in the page, and both lists still reach the last one by key. */
import { randomUUID } from 'node:crypto';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { createCaseload } from '../../../db/index.ts';
import { newClient } from '../../../renderer/logic/caseload/new-client.ts';
import { expect, launchApp, PASSPHRASE, test } from '../app.ts';

const COUNT = 5001;
/** Rows that may be in the page at once. */
const MOST_ROWS = 60;

test('5,001 clients draw at most 60 rows; End reaches the last one', async () => {
  const folder = mkdtempSync(path.join(tmpdir(), 'fairhand-many-'));
  const now = new Date().toISOString();
  const created = await createCaseload({ folder, passphrase: PASSPHRASE, now });
  if (!created.ok) throw new Error(created.code);
  const doing = { at: now, by: 'QM' };
  created.caseload.together(doing, (write) => {
    for (let n = 1; n <= COUNT; n++) {
      const code = `C-${String(n).padStart(4, '0')}`;
      write.put('client', newClient(randomUUID(), `Invented ${code}`, code));
    }
  });
  created.caseload.close();
  const app = await launchApp({ dataFolder: folder, size: { width: 1366, height: 768 } });
  try {
    const { page } = app;
    await page.getByLabel('Passphrase').fill(PASSPHRASE);
    await page.keyboard.press('Enter');
    const lists = page.getByRole('navigation', { name: 'Lists' });
    const rows = page.locator('main tbody tr');
    // Nobody was seen yet: each waits for the first visit.
    await expect(lists.getByText(String(COUNT)).first()).toBeVisible();
    expect(await rows.count()).toBeLessThanOrEqual(MOST_ROWS);
    await page.locator('main tbody button').first().focus();
    await page.keyboard.press('End');
    await expect(page.locator('main tbody').getByRole('button', { name: /^Start: Invented C-5001/ })).toBeFocused();
    expect(await rows.count()).toBeLessThanOrEqual(MOST_ROWS);
    await lists.getByRole('button', { name: 'All clients' }).click();
    await page.locator('main tbody button').first().focus();
    await page.keyboard.press('End');
    await expect(page.getByRole('button', { name: 'Invented C-5001' })).toBeFocused();
    expect(await rows.count()).toBeLessThanOrEqual(MOST_ROWS);
    expect(await page.evaluate(() => document.querySelectorAll('*').length)).toBeLessThan(900);
  } finally {
    await app.close();
    rmSync(folder, { recursive: true, force: true });
  }
});
