/**
 * A newcomer's first client, from an empty folder to a printed family summary, by what the screens say. Each click and
 * each field is counted; the limits are those of the design: record 6 clicks and 6 fields, sample 8, program 2, page 2.
 */
import { readdirSync } from 'node:fs';
import type { Locator } from '@playwright/test';
import { renderDemoPage } from '../../../build/demo/pages/index.ts';
import { expect, PASSPHRASE, test } from '../app.ts';

const lines = ['Please call me back', 'before half past eight.'];

test('from an empty folder to a printed family summary', async ({ app }) => {
  const { page } = app;
  let clicks = 0;
  let fields = 0;
  const walk: string[] = [];
  const click = async (target: Locator, words: string) => {
    await target.click();
    clicks++;
    walk.push(words);
  };
  const type = async (label: string, words: string) => {
    await page.getByLabel(label, { exact: true }).first().fill(words);
    fields++;
    walk.push(`type: ${label}`);
  };
  /** Clicks and fields since the last stage. */
  const stage = (): { clicks: number; fields: number } => {
    const done = { clicks, fields };
    clicks = fields = 0;
    return done;
  };
  const button = (name: string | RegExp, exact = true) => page.getByRole('button', { name, exact });
  const step = (name: string) => page.getByRole('navigation', { name: 'Client' }).getByRole('button', { name });

  await page.getByLabel('Your initials').fill('QM');
  await page.getByLabel('Passphrase', { exact: true }).fill(PASSPHRASE);
  await page.getByLabel(/again/i).fill(PASSPHRASE);
  await button('Create the caseload').click();
  await button(/^I have kept it/, false).click();

  // The first screen says what to do and has one filled button.
  await expect(page.getByText('No clients yet.')).toBeVisible();
  await click(page.locator('[data-primary]'), 'Add a client');
  await type('Name', 'Ada Invented');
  await click(button('Add and open'), 'Add and open');
  await expect(page.getByText('“Start a visit today” stands at the left.')).toBeVisible();
  await click(button('Start a visit today'), 'Start a visit today');
  await expect(page.getByRole('heading', { name: /^Visit of/ })).toBeVisible();
  const record = stage();
  expect(record.clicks).toBeLessThanOrEqual(6);
  expect(record.fields).toBeLessThanOrEqual(6);

  // Help says what is next, and leads there.
  await page.keyboard.press('F1');
  await expect(page.getByRole('dialog')).toContainText('Next at this visit');
  await page.getByRole('dialog').getByRole('button', { name: 'Ask the red flags' }).click();
  for (let group = 0; group < 8 && (await button(/^No to all the rest/, false).count()) > 0; group++)
    await button(/^No to all the rest/, false)
      .first()
      .click();
  await button('Go on to hand and body').click();
  const findings = page.getByRole('heading', { name: 'What may start now' });
  for (let items = 0; items < 30 && !(await findings.isVisible()); items++) {
    await page.keyboard.press('3');
    await page.waitForTimeout(150);
  }
  await expect(findings).toBeVisible();
  stage();

  await click(page.locator('[data-primary]'), 'Go on: Sample');
  await click(button('Start this sample'), 'Start this sample');
  await page.getByLabel('Picture or PDF of the page').setInputFiles({
    name: 'page.jpg',
    mimeType: 'image/jpeg',
    buffer: Buffer.from(await renderDemoPage({ lines, dpi: 300, seed: 5, font: 'patrick-hand', xHeightMm: 3 })),
  });
  // Choosing the file in the system's own dialog: one click on "Add a page", one there.
  clicks += 2;
  walk.push('Add a page', 'the file');
  await expect(page.getByText(/2 lines, \d words\.$/)).toBeVisible();
  expect(stage().clicks).toBeLessThanOrEqual(8);

  await click(step('Program'), 'Program');
  await expect(page.locator('table.program tbody tr').first()).toBeVisible();
  await click(page.locator('[data-primary]:visible'), 'Approve');
  await expect(page.locator('[data-primary]:visible')).toHaveText('Print the program');
  expect(stage().clicks).toBeLessThanOrEqual(2);

  await click(step('Pages'), 'Pages');
  await expect(page.getByRole('region', { name: 'Preview: the page as it prints' })).toContainText('What to practice');
  await click(button('Save as PDF'), 'Save as PDF');
  await expect(page.getByText('The PDF was saved.')).toBeVisible();
  expect(stage().clicks).toBeLessThanOrEqual(2);
  expect(readdirSync(app.saveFolder).filter((name) => name.endsWith('.pdf'))).toHaveLength(1);
  test.info().annotations.push({ type: 'walk', description: walk.join(' > ') });
});
