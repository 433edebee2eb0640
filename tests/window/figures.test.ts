/** The demo caseload asked as a whole, saved without names; the file for whoever helps and the licences are shown. */
import AxeBuilder from '@axe-core/playwright';
import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { expect, test } from './app.ts';

test('figures by diagnosis and occasion, their CSV, and help when it fails', async ({ demoApp }) => {
  const { page, saveFolder } = demoApp;
  const place = (name: string) =>
    page.getByRole('navigation', { name: 'Places' }).getByRole('button', { name, exact: true });
  await place('Figures').click();
  await expect(page.getByRole('rowheader', { name: 'All clients' })).toBeVisible();
  await expect(page.getByText('nobody is named or ranked')).toBeVisible();
  await page.screenshot({ path: '.cache/figures.png' });
  const { violations } = await new AxeBuilder({ page }).setLegacyMode().analyze();
  expect(violations.map(({ id }) => id)).toEqual([]);
  await page.getByRole('button', { name: 'Save as CSV, without names' }).click();
  await expect(page.getByText('No client is named in it.')).toBeVisible();
  const csv = readFileSync(path.join(saveFolder, readdirSync(saveFolder)[0]!), 'utf8');
  const clients = (await demoApp.ask('caseload.list')) as { name: string; code: string }[];
  for (const { name, code } of clients) expect(csv.includes(name) || csv.includes(code)).toBe(false);

  await place('Settings').click();
  await expect(page.getByText('Data folder')).toBeVisible();
  await page.getByRole('button', { name: 'A file for whoever helps …' }).click();
  const text = await page.getByLabel('Text of the file').inputValue();
  expect(text).toContain('Rule table');
  for (const { name } of clients) expect(text).not.toContain(name);
  await page.screenshot({ path: '.cache/help.png' });
  await page.getByRole('button', { name: 'Save as a file …' }).click();
  await expect(page.getByText('Fairhand sends nothing')).toBeVisible();
  await page.getByRole('dialog').getByRole('button', { name: 'Close' }).click();
  await page.getByRole('button', { name: 'Licenses of others …' }).click();
  await expect(page.getByLabel('Licenses', { exact: true })).toHaveValue(/zod/);
});
