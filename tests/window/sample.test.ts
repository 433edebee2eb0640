/** A writing sample in the real window: task, conditions, a scanned page measured, a page without scale, bad files. */
import { renderDemoPage } from '../../build/demo/pages/index.ts';
import { expect, openClient, test } from './app.ts';

const lines = ['Please call me back', 'before half past eight.'];
const scan = () => renderDemoPage({ lines, dpi: 300, seed: 5, font: 'patrick-hand', xHeightMm: 3, wordGap: 1.4 });

test('a page goes in by file, is measured in millimeters and drawn over', async ({ demoApp }) => {
  const { page } = demoApp;
  await openClient(page, 'Margit Oszlan');
  await page.getByRole('button', { name: 'Start a visit today' }).click();
  await page.keyboard.press('Alt+2');
  await page.getByRole('radio', { name: 'A text to compare' }).click();
  await page.getByLabel('Task').selectOption('free');
  await page.getByRole('button', { name: 'Start this sample' }).click();
  await expect(page.getByTitle(/^Free writing.*No page yet/)).toBeVisible();

  // The stopwatch on its key; Space does only what the focused control does.
  await page.keyboard.press('Alt+w');
  await page.waitForTimeout(1200);
  await page.keyboard.press('Alt+w');
  const time = page.getByLabel('Writing time');
  await expect(time).not.toHaveValue('');
  const stands = await time.inputValue();
  await page.getByRole('heading', { name: 'While writing' }).click();
  await page.keyboard.press('Space');
  await page.keyboard.press('w');
  await expect(time).toHaveValue(stands);
  // A slip on the stopwatch does not replace a time that stands.
  await page.keyboard.press('Alt+w');
  await page.keyboard.press('Alt+w');
  await expect(page.getByText(/too short to replace/)).toBeVisible();
  await expect(time).toHaveValue(stands);

  // Files that are no page: a sentence, nothing added.
  const file = page.getByLabel('Picture or PDF of the page');
  await file.setInputFiles({ name: 'page.png', mimeType: 'image/png', buffer: Buffer.alloc(0) });
  await expect(page.getByRole('alert')).toContainText('empty');
  await file.setInputFiles({
    name: 'page.png',
    mimeType: 'image/png',
    buffer: Buffer.from('this is no picture at all'),
  });
  await expect(page.getByRole('alert')).toContainText('not a picture');

  await file.setInputFiles({ name: 'page.jpg', mimeType: 'image/jpeg', buffer: Buffer.from(await scan()) });
  await expect(page.getByText(/2 lines, 8 words\.$/)).toBeVisible();
  await expect(page.locator('svg .word')).toHaveCount(8);
  const xHeight = page.getByRole('group', { name: /height/i }).first();
  await expect(xHeight).toContainText(/[23]\.\d\d mm/);

  // Leave a word out: the numbers follow, both values are kept, one key takes it back.
  await page.locator('svg .word').first().dispatchEvent('click');
  await page.getByRole('button', { name: /^Leave this word out/ }).click();
  await expect(page.locator('svg .word.excluded')).toHaveCount(1);
  await page.getByRole('button', { name: 'Take back all' }).click();
  await expect(page.locator('svg .word.excluded')).toHaveCount(0);

  // Lower the baseline: the drawn line and the heights follow, and stay when the page is measured again.
  const ends = () => page.locator('svg .baseline').first().getAttribute('points');
  const tab = (name: string) => page.getByRole('tab', { name: new RegExp(`^${name}`) }).click();
  await tab('Measures');
  const before = { line: await ends(), height: await xHeight.innerText() };
  await tab('Words');
  await page.getByRole('button', { name: 'lower', exact: true }).click();
  await expect.poll(ends).not.toBe(before.line);
  await tab('Measures');
  await expect(xHeight).not.toHaveText(before.height);
  const moved = await ends();
  await page.getByRole('button', { name: 'Measure again' }).click();
  await expect(page.locator('progress')).toHaveCount(0);
  expect(await ends()).toBe(moved);
  await tab('Words');
  await page.getByRole('button', { name: 'Take back all' }).click();
  await expect.poll(ends).toBe(before.line);

  // Join, and take back; a new line begins with the word that was chosen.
  await page.getByRole('button', { name: /^Join with the next word/ }).click();
  await expect(page.getByText(/2 lines, 7 words\.$/)).toBeVisible();
  await page.getByRole('button', { name: 'Take back the last correction' }).click();
  await expect(page.getByText(/2 lines, 8 words\.$/)).toBeVisible();
  await page.getByRole('button', { name: /^Word after/ }).click();
  await page.getByRole('button', { name: /^New line from here/ }).click();
  await expect(page.getByText(/3 lines, 8 words\.$/)).toBeVisible();
  await page.getByRole('button', { name: 'Take back the last correction' }).click();
  await expect(page.getByText(/2 lines, 8 words\.$/)).toBeVisible();

  // By keyboard the word goes to the line below, and stays there when the page is measured again.
  const perLine = () => page.locator('table tbody tr td:nth-child(2)').allTextContents();
  await page.keyboard.press('Alt+PageDown');
  await tab('Measures');
  await expect.poll(perLine).toEqual(['3', '5']);
  await page.getByRole('button', { name: 'Measure again' }).click();
  await expect(page.locator('progress')).toHaveCount(0);
  await expect.poll(perLine).toEqual(['3', '5']);
  // Both ranges stand beside a value: how exactly it was read, and what a hand varies from page to page.
  await expect(xHeight).toContainText(/this hand [\d.]+ to [\d.]+ mm/);
  if (process.env['FAIRHAND_SHOT']) await page.screenshot({ path: process.env['FAIRHAND_SHOT'] });
  // At 200 % of a laptop the picture keeps its room, and what enlarges it lies over nothing else.
  await page.setViewportSize({ width: 683, height: 384 });
  for (const layer of ['Letters', 'Closing', 'Slant'])
    await page.getByRole('button', { name: layer, exact: true }).click({ trial: true, timeout: 10_000 });
});

test('a page without scale says so; two marked points give it', async ({ demoApp }) => {
  const { page } = demoApp;
  await openClient(page, 'Margit Oszlan');
  await page.keyboard.press('Alt+2');
  await page.getByRole('button', { name: 'New sample …' }).click();
  await page.getByRole('radio', { name: 'A text to compare' }).click();
  await page.getByLabel('Task').selectOption('free');
  await page.getByRole('button', { name: 'Start this sample' }).click();
  await expect(page.getByTitle(/^Free writing.*No page yet/)).toBeVisible();
  // 72 dpi is what programs write when they know nothing: it is not believed.
  const { default: sharp } = await import('sharp');
  const { data, info } = await sharp(await scan())
    .resize({ width: 1240 })
    .raw()
    .toBuffer({ resolveWithObject: true });
  const { width, height, channels } = info;
  const bare = await sharp(data, { raw: { width, height, channels } }).png().toBuffer();
  await page
    .getByLabel('Picture or PDF of the page')
    .setInputFiles({ name: 'photo.png', mimeType: 'image/png', buffer: bare });
  await expect(page.getByText('This page has no scale yet')).toBeVisible();
  await page.getByRole('button', { name: 'Mark two points' }).click();
  // 210 mm across the whole width of the page: half of it is 105 mm.
  const picture = page.locator('svg.crosshair');
  const { width: shown } = (await picture.boundingBox())!;
  await picture.click({ position: { x: shown * 0.25, y: 60 } });
  await picture.click({ position: { x: shown * 0.75, y: 60 } });
  await page.getByLabel('Their distance').fill('105');
  await page.keyboard.press('Tab');
  await page.getByRole('button', { name: /^Use 1[45]\d dpi/ }).click();
  await expect(page.getByText(/2 lines, 8 words\.$/)).toBeVisible();
});
