/** Blind reading in the real window, by keyboard alone. */
import type { Locator, Page } from '@playwright/test';
import { expect, test } from './app.ts';
import { axe, addPage, call, idOf, openTab, seedClient, seedOther, seedPair } from './seeds/progress-seed.ts';

/** What a reader would type for the line on the screen: lines come shuffled, so its height on the page tells which it is. */
async function readOf(dialog: Locator): Promise<string> {
  const box = await dialog.getByRole('img', { name: 'The written line to read' }).getAttribute('viewBox');
  const top = Number(box!.split(' ')[1]);
  return top < 330 ? 'Please coll me back before half past eight' : 'The plumber is coming at t?o on Thursday';
}

/** The card of 85.60 x 53.98 mm (ISO/IEC 7810, ID-1) fitted twice on a screen of 96 dpi: 324 by 204 pixels. */
async function fitCard(page: Page): Promise<void> {
  const dialog = page.getByRole('dialog', { name: 'True size of this screen' });
  await dialog.getByLabel('Across, px').fill('324');
  await dialog.getByLabel('Down, px').fill('204');
  await dialog.getByRole('button', { name: 'It fits', exact: true }).click();
  await expect(dialog.getByRole('status')).toContainText('Once more');
  await dialog.getByLabel('Across, px').fill('324');
  await dialog.getByLabel('Down, px').fill('204');
  await dialog.getByRole('button', { name: 'It fits again' }).click();
  await expect(dialog).toBeHidden();
}

const PX_PER_MM = (324 / 85.6 + 204 / 53.98) / 2;

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
  await expect(page.getByRole('dialog', { name: 'True size of this screen' })).toBeVisible();
  expect(await axe(page)).toEqual([]);
  await fitCard(page);

  const dialog = page.getByRole('dialog', { name: 'Blind reading' });
  await expect(dialog).toBeVisible();
  await expect(dialog).toContainText('Shown at true size.');
  // The page has 150 dpi: so many millimeters wide as it was written, so many it is on the screen.
  const drawn = dialog.getByRole('img', { name: 'The written line to read' });
  const [, , wide, high] = (await drawn.getAttribute('viewBox'))!.split(' ').map(Number);
  const seen = (await drawn.boundingBox())!;
  expect(seen.width).toBeCloseTo((wide! / 150) * 25.4 * PX_PER_MM, -0.5);
  expect(seen.height / seen.width).toBeCloseTo(high! / wide!, 2);
  // A window that is too narrow moves the line; it never makes it smaller.
  const size0 = page.viewportSize() ?? (await page.evaluate(() => ({ width: innerWidth, height: innerHeight })));
  await page.setViewportSize({ width: 360, height: 700 });
  expect((await drawn.boundingBox())!.width).toBeCloseTo(seen.width, 0);
  await expect(dialog).toContainText('The line goes on: Page Down moves it to the left');
  const left = (await drawn.boundingBox())!.x;
  await dialog.getByLabel('Type what you read').press('PageDown');
  await expect.poll(async () => (await drawn.boundingBox())!.x).toBeLessThan(left - 50);
  await page.setViewportSize(size0);
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
  await expect(saved).toContainText('at true size');
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
  await page.getByRole('button', { name: 'Read without it' }).click();
  const dialog = page.getByRole('dialog', { name: 'Blind reading' });
  await expect(dialog).toContainText('Shown at a size not known.');
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
    expect(mine[0]).toMatchObject({ sampleId: idOf(sample), lines: [{}, {}], enlargement: null });
  }
});

test('a pause keeps what was read, and the queue goes on where it stopped', async ({ app }) => {
  await seedClient(app);
  await addPage(app);
  await openTab(app, 'Read back');
  const { page } = app;
  await page.getByLabel('Reader’s initials', { exact: true }).fill('ZZ');
  await page.getByRole('button', { name: /Start reading/ }).click();
  await page.getByRole('button', { name: 'Read without it' }).click();
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

test('a reader who knows the text is warned, and the reading keeps how often; a size that differs is not compared', async ({
  app,
}) => {
  await seedClient(app);
  await addPage(app);
  await seedPair(app);
  await call(app, 'reading.save', {
    id: idOf('reading of XY'),
    clientId: idOf('other'),
    visitId: idOf('other visit 0'),
    sampleId: idOf('other sample 0'),
    readAt: '2026-01-05T15:00:00.000Z',
    reader: 'unfamiliar',
    readerInitials: 'xy',
    blind: true,
    lines: [],
    counted: { right: 12, of: 24 },
  });
  await openTab(app, 'Read back');
  const { page } = app;
  // AB has taken the samples, the last one less than a week ago or just so; XY read the same text long ago.
  const initials = page.getByLabel('Reader’s initials', { exact: true });
  await initials.fill('XY');
  await initials.press('Tab');
  await expect(page.getByText(/The text of one waiting sample is known to this reader: met once/)).toBeVisible();
  expect(await axe(page)).toEqual([]);
  if (process.env['SHOTS']) await page.screenshot({ path: '.cache/shots/readback-known.png' });
  await page.getByRole('button', { name: /Start reading/ }).click();
  await page
    .getByRole('dialog', { name: 'True size of this screen' })
    .screenshot({ path: '.cache/shots/screen-size.png' });
  await page.getByRole('button', { name: 'Read without it' }).click();
  const dialog = page.getByRole('dialog', { name: 'Blind reading' });
  for (let line = 1; line <= 2; line++) {
    await expect(dialog.getByText(`Line ${line} of 2`)).toBeVisible();
    await page.keyboard.type(await readOf(dialog));
    await page.keyboard.press('Enter');
  }
  await page.keyboard.press('Enter');
  const { readings } = (await call(app, 'client.open', { clientId: idOf('client') })) as {
    readings: { readerInitials: string; textMetBefore?: number }[];
  };
  expect(readings.find(({ readerInitials }) => readerInitials === 'XY')!.textMetBefore).toBe(1);
  await expect(page.locator('section', { hasText: 'XY, unfamiliar reader' }).first()).toContainText(
    'at a size not known; had met the text once',
  );
});
