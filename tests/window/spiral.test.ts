/** The sheet of two spirals in the real window: printed to PDF, drawn on by formula, brought back and measured. */
import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import sharp from 'sharp';
import { decodePage } from '../../electron/files/decode/decode.ts';
import { spiralPlaces } from '../../renderer/measure/index.ts';
import { inkSvg } from '../measure/pages/spiral-picture.ts';
import { expect, openClient, test } from './app.ts';

/** The printed page as a scanner gives it, with both spirals drawn on it. */
async function drawnOn(pdf: Uint8Array): Promise<Buffer> {
  const { gray } = await decodePage(pdf);
  const [widthMm, heightMm] = [210, 297];
  const { traced, free } = spiralPlaces(widthMm, heightMm);
  const ink = [
    inkSvg({ turns: 3.9, pitch: 11, amplitude: 0.8, swings: 9.2, per: 'turn' }, traced.centerX, traced.centerY),
    inkSvg({ turns: 4.1, pitch: 10.1, amplitude: 1.2, swings: 7.4, per: 'turn' }, free.centerX, free.centerY),
  ].join('');
  const { width, height, data } = gray;
  const svg = `<svg xmlns="http://www.w3.org/2000/svg" width="${width}" height="${height}" viewBox="0 0 ${widthMm} ${heightMm}">${ink}</svg>`;
  return sharp(data, { raw: { width, height, channels: 1 } })
    .composite([{ input: Buffer.from(svg) }])
    .png()
    .toBuffer();
}

test('the sheet prints, comes back drawn on, and is told in words with its method', async ({ demoApp }) => {
  const { page, saveFolder } = demoApp;
  await openClient(page, 'Margit Oszlan');
  await page.getByRole('button', { name: 'Start a visit today' }).click();
  await page.keyboard.press('Alt+2');
  await page.getByRole('radio', { name: 'A text to compare' }).click();
  await page.getByLabel('Task').selectOption('free');
  await page.getByRole('button', { name: 'Start this sample' }).click();
  await page.getByRole('tab', { name: 'Spiral' }).click();
  await page.getByRole('button', { name: 'Print the sheet …' }).click();
  await expect(page.getByRole('radio', { name: /^Spiral sheet/ })).toBeChecked();
  await expect(page.getByText(/Print at actual size/)).toBeVisible();
  await page.getByRole('radio', { name: 'A4' }).click();
  await page.getByRole('button', { name: 'Save as PDF' }).click();
  await expect(page.getByText('The PDF was saved.')).toBeVisible();
  const pdf = readdirSync(saveFolder).find((name) => name.endsWith('.pdf'));
  const scan = await drawnOn(readFileSync(path.join(saveFolder, pdf!)));

  await page.keyboard.press('Alt+2');
  await page.getByRole('tab', { name: 'Spiral' }).click();
  await page.getByRole('radio', { name: 'Left hand' }).click();
  await page.getByLabel('On the line').fill('12');
  await page.getByLabel('On the line').blur();
  const file = page.getByLabel('Picture or PDF of the drawn sheet');
  await file.setInputFiles({ name: 'no.png', mimeType: 'image/png', buffer: Buffer.from('no picture at all') });
  await expect(page.getByRole('alert')).toContainText('not a picture');
  await file.setInputFiles({ name: 'spirals.png', mimeType: 'image/png', buffer: scan });
  const card = page.getByRole('article', { name: 'Spirals, left hand' });
  await expect(card).toContainText(/9\.[0-4] times a turn/);
  await expect(card).toContainText(/7\.[2-6] times a turn/);
  // 9.2 swings on 3.9 turns in 12 s.
  await expect(card).toContainText(/Drawn in 12 s: (2\.9|3\.0|3\.1) swings a second/);
  await expect(card).toContainText('Without the time of drawing no swings a second are told.');
  await expect(card).toContainText(/Method spiral-\d+, \d+ dpi by the corner marks of the sheet/);
  await expect(card).toContainText('not what it comes from');
  await expect(card.getByRole('img', { name: /The spiral as drawn/ })).toHaveCount(2);
  if (process.env['SPIRAL_SHOTS']) await card.screenshot({ path: `${process.env['SPIRAL_SHOTS']}/card.png` });
  if (process.env['SPIRAL_SHOTS']) await page.screenshot({ path: `${process.env['SPIRAL_SHOTS']}/window.png` });

  // A time told afterwards gives the swings a second without measuring; it is all kept.
  await card.getByLabel('Free (seconds)').fill('10');
  await card.getByLabel('Free (seconds)').blur();
  await expect(card).toContainText(/Drawn in 10 s: (2\.9|3\.0|3\.1) swings a second/);
  await page.keyboard.press('Alt+1');
  await page.keyboard.press('Alt+2');
  await page.getByRole('tab', { name: 'Spiral' }).click();
  await expect(page.getByRole('article', { name: 'Spirals, left hand' })).toContainText('Drawn in 10 s');
});
