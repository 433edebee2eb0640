/** Reference ink played into the real window: the same numbers as its files, out as InkML and in again unchanged. */
import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { playPen } from '../../../build/demo/ink/play-pen.ts';
import { readInkml } from '../../../renderer/ink/index.ts';
import { expect, test } from '../app.ts';
import { finish, kept, openSheet, PX_PER_MM, valueOf } from './pen-desk.ts';

const folder = new URL('../../outside/data/ink/', import.meta.url);
interface Expected {
  file: string;
  expect: Record<string, { value: number; tol: number }>;
}
const { files } = JSON.parse(readFileSync(new URL('expected.json', folder), 'utf8')) as { files: Expected[] };
/** Of the text and its words, which this sample does not have. */
const ofText = ['letters-per-minute', 'lifts-per-word'];

for (const name of ['r01-strokes.inkml', 'r05-text.inkml']) {
  test(`${name} written into the window tells what its file tells`, async ({ demoApp }) => {
    await openSheet(demoApp);
    const ink = readInkml(readFileSync(new URL(name, folder)));
    const sent = await playPen(demoApp.page, ink, { pxPerMm: PX_PER_MM, withPressure: true });
    const { measures, samples } = await finish(demoApp);
    expect(Math.abs(samples - sent), 'kept against sent').toBeLessThanOrEqual(1);
    const { expect: wanted } = files.find(({ file }) => file === name)!;
    for (const [code, { value, tol }] of Object.entries(wanted)) {
      if (ofText.includes(code)) continue;
      // Times of the test protocol scatter by 0.1 ms; counts are exact.
      const room = tol + (Number.isInteger(value) ? 0 : 0.005 * Math.abs(value));
      expect(Math.abs(valueOf(measures, code)! - value), code).toBeLessThanOrEqual(room);
    }

    const place = demoApp.page.getByRole('slider', { name: 'Place in the writing, seconds' });
    await place.focus();
    await demoApp.page.keyboard.press('Home');
    await expect(place).toHaveValue('0');
    await demoApp.page.keyboard.press('ArrowRight');
    await expect(place).toHaveValue('0.05');
    // Slow first: on a busy machine a quick replay is over before anybody looks.
    await demoApp.page.getByRole('button', { name: '1/4x', exact: true }).click();
    await demoApp.page.getByRole('button', { name: 'Replay', exact: true }).click();
    await expect(demoApp.page.getByRole('button', { name: 'Stop', exact: true })).toBeVisible();
    await demoApp.page.getByRole('button', { name: '4x', exact: true }).click();
    await expect(demoApp.page.getByRole('button', { name: 'Replay', exact: true })).toBeVisible();
    // The slider goes by twentieths of a second.
    expect(Math.abs(Number(await place.inputValue()) - valueOf(measures, 'writing-time')!)).toBeLessThan(0.11);
    if (process.env['SHOTS']) await demoApp.page.screenshot({ path: `${process.env['SHOTS']}/${name}.png` });

    await demoApp.page.getByRole('button', { name: 'Save as InkML' }).click();
    await expect.poll(() => readdirSync(demoApp.saveFolder).filter((file) => file.endsWith('.inkml'))).toHaveLength(1);
    const [file] = readdirSync(demoApp.saveFolder);
    const saved = readFileSync(path.join(demoApp.saveFolder, file!));
    expect(saved.toString()).not.toMatch(/Oszlan|Test pen/);
    const input = demoApp.page.locator('input[type=file][accept=".inkml"]');
    await input.setInputFiles(path.join(demoApp.saveFolder, file!));
    await expect(demoApp.page.getByRole('article')).toHaveCount(2);
    const again = await kept(demoApp);
    for (const { code, value } of measures.measures) {
      if (value === null || ofText.includes(code)) continue;
      const other = valueOf(again.measures, code)!;
      expect(Math.abs(other - value), code).toBeLessThanOrEqual(0.002 * Math.abs(value) + 0.005);
    }
    // The same file twice is told.
    await input.setInputFiles(path.join(demoApp.saveFolder, file!));
    await expect(demoApp.page.getByRole('alert')).toContainText('already');
  });
}
