/**
 * A newcomer's first client, from an empty folder to a printed family summary, by what the screens say. Each click and
 * each field is counted; the limits are those of the design: record 6 clicks and 6 fields, sample 8, program 2, page 2.
 */
import { readdirSync } from 'node:fs';
import type { Locator } from '@playwright/test';
import { renderDemoPage } from '../../../build/demo/pages/index.ts';
import { expect, PASSPHRASE, test } from '../app.ts';

const lines = ['They saw a squeaky van fixed', 'just before uncle packs my gazebo'];

test('from an empty folder to a printed family summary, counted', async ({ app }) => {
  // One window walks many screens: the limit tells what hangs, not how busy the machine is.
  test.setTimeout(300_000);
  const { page } = app;
  const walk: string[] = [];
  let clicks = 0;
  let fields = 0;
  const click = async (target: Locator, words: string) => {
    await target.click();
    clicks++;
    walk.push(words);
  };
  /** Clicks and fields since the last stage. */
  const stage = (name: string): { clicks: number; fields: number } => {
    const done = { clicks, fields };
    walk.push(`[${name}: ${clicks} clicks, ${fields} fields]`);
    clicks = fields = 0;
    return done;
  };
  const primary = (words: string) => page.locator('[data-primary]:visible').filter({ hasText: words });
  const button = (name: string | RegExp) => page.getByRole('button', { name, exact: true });
  const field = (name: string) => page.getByRole('textbox', { name, exact: true });
  const step = (name: string) => page.getByRole('navigation', { name: 'Client' }).getByRole('button', { name });

  await field('Your initials').fill('QM');
  await field('Passphrase').fill(PASSPHRASE);
  await field('Passphrase again').fill(PASSPHRASE);
  await button('Create the caseload').click();
  await page.getByRole('button', { name: /^I have kept it/ }).click();

  // The first screen says how a visit goes and has one filled button; so has every screen after it.
  await expect(page.getByRole('heading', { name: 'How a first visit goes' })).toBeVisible();
  await click(primary('Add a client'), 'Add a client');
  await field('Name').fill('Ada Invented');
  fields++;
  await click(button('Add and open'), 'Add and open');
  await click(primary('Start the first visit'), 'Start the first visit');
  await expect(page.getByRole('heading', { name: /^Visit of/ })).toBeVisible();
  const record = stage('record');
  expect(record.clicks).toBeLessThanOrEqual(6);
  expect(record.fields).toBeLessThanOrEqual(6);

  // Help says what is next, and leads there; closing it gives the focus back.
  const title = page.getByRole('heading', { level: 1 });
  await page.keyboard.press('F1');
  const help = page.getByRole('dialog');
  await expect(help).toContainText('Next at this visit');
  await page.keyboard.press('Escape');
  await expect(page.locator('body')).not.toBeFocused();
  await page.keyboard.press('F1');
  await help.getByRole('button', { name: 'Ask the red flags' }).click();
  await expect(title).toBeFocused();
  // One key a question: emergencies and self-harm are answered one by one.
  const goOn = primary('Go on to hand and body');
  for (let asked = 0; asked < 30 && !(await goOn.isVisible()); asked++) {
    const now = await page.locator('[aria-current=step]').getAttribute('id');
    await page.keyboard.press('n');
    await page.waitForFunction(
      (id) => document.querySelector('[aria-current=step]')?.id !== id || document.querySelector('[data-primary]'),
      now,
    );
  }
  await goOn.click();
  // One key an item, and a letter where the item asks which.
  const findings = page.getByRole('heading', { name: 'What may start now' });
  const item = page.locator('#item-title');
  for (let keys = 0; keys < 60 && !(await findings.isVisible()); keys++) {
    await page.keyboard.press((await page.getByText('comes first: press its letter').isVisible()) ? 'a' : '3');
    await page.waitForTimeout(120);
  }
  await expect(findings).toBeVisible();
  await expect(item).toHaveCount(0);
  stage('screen');

  await click(primary('Go on: Sample'), 'Go on: Sample');
  await click(button('Start this sample'), 'Start this sample');
  const chooser = page.waitForEvent('filechooser');
  await click(button('Add the written page'), 'Add the written page');
  const drawn = await renderDemoPage({ lines, dpi: 300, seed: 5, font: 'patrick-hand', xHeightMm: 3 });
  await (await chooser).setFiles({ name: 'page.jpg', mimeType: 'image/jpeg', buffer: Buffer.from(drawn) });
  clicks++;
  walk.push('the file, in the system’s dialog');
  await expect(page.getByText(/2 lines, \d+ words\.$/)).toBeVisible();
  expect(stage('sample').clicks).toBeLessThanOrEqual(8);

  await click(step('Program'), 'Program');
  await expect(page.locator('table.program tbody tr').first()).toBeVisible();
  await click(primary('Approve'), 'Approve');
  await expect(primary('Print the program')).toBeVisible();
  expect(stage('program').clicks).toBeLessThanOrEqual(2);

  await click(step('Pages'), 'Pages');
  await expect(page.getByRole('region', { name: 'Preview: the page as it prints' })).toContainText('What to practice');
  await click(button('Save as PDF'), 'Save as PDF');
  await expect(page.getByText('The PDF was saved.')).toBeVisible();
  expect(stage('family page').clicks).toBeLessThanOrEqual(2);
  expect(readdirSync(app.saveFolder).filter((name) => name.endsWith('.pdf'))).toHaveLength(1);
  test.info().annotations.push({ type: 'walk', description: walk.join(' > ') });
});
