/** Blind reading in the real window, by keyboard alone. */
import type { Locator } from '@playwright/test';
import { expect, test } from './app.ts';
import { axe, addPage, openTab, seedClient } from './progress-seed.ts';

/** What a reader would type for the line on the screen: lines come shuffled, so its height on the page tells which it is. */
async function readOf(dialog: Locator): Promise<string> {
  const box = await dialog.getByRole('img', { name: 'The written line to read' }).getAttribute('viewBox');
  const top = Number(box!.split(' ')[1]);
  return top < 330 ? 'Please coll me back before half past eight' : 'The plumber is coming at t?o on Thursday';
}

test('a reader types line after line; name, date and text stay hidden; the score follows', async ({ app }) => {
  await seedClient(app);
  await addPage(app);
  await openTab(app, 'Read-back');
  const { page } = app;
  await expect(page.getByText('2 lines waiting')).toBeVisible();
  await page.getByLabel('Reader’s initials', { exact: true }).fill('ZZ');
  await page.getByLabel('Reader’s initials', { exact: true }).press('Tab');
  await page.getByRole('button', { name: /Start reading/ }).focus();
  await page.keyboard.press('Enter');

  const dialog = page.getByRole('dialog', { name: 'Blind reading' });
  await expect(dialog).toBeVisible();
  await expect(dialog).not.toContainText('Ines');
  await expect(dialog).not.toContainText('plumber');
  const box = (await dialog.boundingBox())!;
  const size = page.viewportSize() ?? (await page.evaluate(() => ({ width: innerWidth, height: innerHeight })));
  expect(box.width).toBeGreaterThanOrEqual(size.width - 1);
  expect(box.height).toBeGreaterThanOrEqual(size.height - 1);
  const found = await axe(page);
  expect(found).toEqual([]);

  const field = dialog.getByLabel('Type what you read');
  await expect(field).toBeFocused();
  await expect(field).toHaveAttribute('spellcheck', 'false');
  await page.keyboard.press('Enter');
  await expect(dialog.getByRole('alert')).toContainText('Type ? for each letter');
  await page.keyboard.type(await readOf(dialog));
  await page.keyboard.press('Enter');
  await expect(dialog.getByText('Line 2 of 2')).toBeVisible();
  await page.keyboard.type(await readOf(dialog));
  await page.keyboard.press('Enter');
  await expect(dialog.getByText('All lines are read')).toBeVisible();
  await page.keyboard.press('Enter');

  await expect(page.getByText('No lines are waiting to be read.')).toBeVisible();
  const saved = page.locator('section', { hasText: 'Letters confused most' }).first();
  await expect(saved).toContainText('ZZ');
  await saved.getByText('On the page, ZZ (2)').click();
  await expect(saved.locator('svg polygon')).toHaveCount(2);
  await expect(saved.locator('svg text')).toHaveText(['coll', 't?o']);
  await page.screenshot({ path: '/tmp/fh-marks.png', fullPage: true });
});

test('a pause keeps what was read, and the queue goes on where it stopped', async ({ app }) => {
  await seedClient(app);
  await addPage(app);
  await openTab(app, 'Read-back');
  const { page } = app;
  await page.getByLabel('Reader’s initials', { exact: true }).fill('ZZ');
  await page.getByRole('button', { name: /Start reading/ }).click();
  await page.keyboard.type('something');
  await page.keyboard.press('Enter');
  await expect(page.getByText('Line 2 of 2')).toBeVisible();
  await page.keyboard.press('Escape');
  await expect(page.getByText('1 line waiting')).toBeVisible();
});

test('the page of readings passes axe in both themes', async ({ app }) => {
  await seedClient(app);
  await openTab(app, 'Read-back');
  const { page } = app;
  await expect(page.getByRole('heading', { name: 'Blind reading' })).toBeVisible();
  await page.getByText('Read on paper: enter the count').click();
  for (let theme = 0; theme < 2; theme++) {
    const found = await axe(page);
    expect(found).toEqual([]);
    await page.keyboard.press('Alt+t');
  }
});
