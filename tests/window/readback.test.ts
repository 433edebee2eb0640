/** Blind reading in the real window, by keyboard alone. */
import type { Locator } from '@playwright/test';
import { expect, test } from './app.ts';
import { axe, addPage, call, idOf, openTab, seedClient, seedOther } from './seeds/progress-seed.ts';

/** What a reader would type for the line on the screen: lines come shuffled, so its height on the page tells which it is. */
async function readOf(dialog: Locator): Promise<string> {
  const box = await dialog.getByRole('img', { name: 'The written line to read' }).getAttribute('viewBox');
  const top = Number(box!.split(' ')[1]);
  return top < 330 ? 'Please coll me back before half past eight' : 'The plumber is coming at t?o on Thursday';
}

test('a reader types line after line; name, date and text stay hidden; the score follows', async ({ app }) => {
  await seedClient(app);
  await addPage(app);
  await openTab(app, 'Read back');
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
  const saved = page.locator('section', { hasText: 'ZZ, unfamiliar reader' }).first();
  await expect(saved).toContainText('Letters confused most');
  await expect(saved).toContainText('ZZ');
  await expect(saved).toContainText('14 of 16');
  await saved.getByText('On the page, ZZ (2)').click();
  await expect(saved.locator('svg polygon:not(.letter)')).toHaveCount(2);
  await expect(saved.locator('svg text')).toHaveText(['coll', 't?o']);

  // What the client spells in a way of their own was no fault of the hand: noted by keyboard, it counts as read.
  await saved.getByText('The client’s own spelling (0)').focus();
  await page.keyboard.press('Enter');
  await saved.getByLabel('Word meant').focus();
  await page.keyboard.type('plane');
  await page.keyboard.press('Tab');
  await page.keyboard.type('plain');
  await page.keyboard.press('Enter');
  await expect(saved.getByRole('alert')).toContainText('Neither word stands in the text of this sample.');
  await saved.getByLabel('Word meant').fill('call');
  await saved.getByLabel('as the client spells it').fill('coll');
  await page.keyboard.press('Enter');
  await expect(saved).toContainText('15 of 16');
  await expect(saved.getByLabel('Word meant')).toBeFocused();
  await expect(saved.locator('svg text')).toHaveText(['t?o']);
  expect(await axe(page)).toEqual([]);
  await saved.getByRole('button', { name: 'Remove coll for call' }).click();
  await expect(saved).toContainText('14 of 16');
});

test('lines of all clients come mixed, say nothing of whose they are, and land at the right client', async ({
  app,
}) => {
  await seedClient(app);
  await addPage(app);
  await seedOther(app);
  await openTab(app, 'Read back');
  const { page } = app;
  await expect(page.getByText('2 lines waiting')).toBeVisible();
  await page.getByRole('radio', { name: /all clients, mixed/ }).focus();
  await page.keyboard.press('Space');
  await expect(page.getByText('4 lines waiting')).toBeVisible();
  await page.getByLabel('Reader’s initials', { exact: true }).fill('ZZ');
  await page.getByRole('button', { name: /Start reading/ }).focus();
  await page.keyboard.press('Enter');
  const dialog = page.getByRole('dialog', { name: 'Blind reading' });
  for (let line = 1; line <= 4; line++) {
    await expect(dialog.getByText(`Line ${line} of 4`)).toBeVisible();
    await expect(dialog).not.toContainText(/Ines|Otto|C-0/);
    await page.keyboard.type(await readOf(dialog));
    await page.keyboard.press('Enter');
  }
  await expect(dialog.getByText('All lines are read')).toBeVisible();
  await page.keyboard.press('Enter');
  await expect(page.getByText('No lines are waiting to be read.')).toBeVisible();
  for (const [client, sample] of [
    ['client', 'sample 4'],
    ['other', 'other sample'],
  ] as const) {
    const { readings } = (await call(app, 'client.open', { clientId: idOf(client) })) as {
      readings: { sampleId: string; readerInitials: string; lines: unknown[] }[];
    };
    const mine = readings.filter((reading) => reading.readerInitials === 'ZZ');
    expect(mine).toHaveLength(1);
    expect(mine[0]).toMatchObject({ sampleId: idOf(sample), lines: [{}, {}] });
  }
});

test('a pause keeps what was read, and the queue goes on where it stopped', async ({ app }) => {
  await seedClient(app);
  await addPage(app);
  await openTab(app, 'Read back');
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
  await openTab(app, 'Read back');
  const { page } = app;
  await expect(page.getByRole('heading', { name: 'Blind reading' })).toBeVisible();
  await page.getByRole('button', { name: 'Enter a count from paper' }).click();
  for (let theme = 0; theme < 2; theme++) {
    const found = await axe(page);
    expect(found).toEqual([]);
    await page.keyboard.press('Alt+t');
  }
});
