/**
 * Three people on one laptop, from the first start on: added under Settings, handed over by one key, the assistant's
 * entry waits for another's signature, a removed one is refused, and the trail says who.
 */
import { existsSync } from 'node:fs';
import type { Page } from '@playwright/test';
import { expect, openClient, PASSPHRASE, showPart, test } from '../app.ts';
import { axe } from '../seeds/progress-seed.ts';
import { client, visit } from '../../db/plain-facts.ts';

const HERS = 'nine lighthouses and a spoon';
const ASSISTANT = 'eleven quiet harbors in fog';

/** A field by its label, required or not. */
const field = (page: Page, label: string) => page.getByLabel(new RegExp(`^${label}(\\s\\*)?$`));

async function signIn(page: Page, initials: string, passphrase: string) {
  await field(page, 'Initials').fill(initials);
  await field(page, 'Passphrase').fill(passphrase);
  await page.keyboard.press('Enter');
}
const place = (page: Page, name: string) =>
  page.getByRole('navigation', { name: 'Places' }).getByRole('button', { name }).click();
const tab = (page: Page, name: string) =>
  page.getByRole('navigation', { name: 'Client' }).getByRole('button', { name, exact: true }).click();
const people = async (page: Page) => {
  await place(page, 'Settings');
  await page.getByRole('navigation', { name: 'Settings' }).getByRole('button', { name: 'People' }).click();
};
const shot = async (page: Page, name: string) => {
  if (process.env['SHOTS']) await page.screenshot({ path: `${process.env['SHOTS']}/${name}.png` });
};

async function add(page: Page, name: string, initials: string, role: string, first: string) {
  await page.getByRole('button', { name: 'Add a person' }).click();
  await field(page, 'Name').fill(name);
  await field(page, 'Initials').fill(initials);
  await page.getByRole('radio', { name: role }).click();
  await field(page, 'Passphrase of the new person').fill(first);
  await field(page, 'Passphrase of the new person again').fill(first);
  await field(page, 'Your own passphrase').fill(PASSPHRASE);
  await page.getByRole('button', { name: 'Add this person' }).click();
  await expect(page.getByText(`${initials} can sign in now`)).toBeVisible({ timeout: 20_000 });
}

test('three people share a laptop: each signs in, the assistant is refused, the removed one too', async ({ app }) => {
  const { page } = app;
  await field(page, 'Your initials').fill('MK');
  await field(page, 'Passphrase').fill(PASSPHRASE);
  await field(page, 'Passphrase again').fill(PASSPHRASE);
  await page.getByRole('button', { name: 'Create the caseload' }).click();
  await page.getByRole('button', { name: 'I have kept it' }).click();
  const person = client({ name: 'Ines Invented', code: 'K1' });
  await app.ask('client.save', person);
  await app.ask('visit.save', visit(person.id));

  await people(page);
  await expect(page.getByText('This caseload has one sign-in.')).toBeVisible();
  await add(page, 'Quinn Meadow', 'QM', 'Therapist', HERS);
  // The sheet of before knew of one sign-in.
  await page.getByRole('button', { name: 'I have kept it' }).click();
  await add(page, 'Ash Stone', 'AS', 'Assistant or student', ASSISTANT);
  const row = (initials: string) => page.getByRole('row', { name: new RegExp(`^${initials} `) });
  await expect(row('AS')).toContainText('Assistant or student');
  await expect(row('MK')).toContainText('signed in');
  // The list by arrows; the detail follows.
  await page.getByRole('button', { name: 'AS', exact: true }).focus();
  await page.keyboard.press('ArrowUp');
  await expect(page.getByRole('heading', { name: 'Quinn Meadow' })).toBeVisible();
  await expect(page.getByRole('button', { name: 'QM', exact: true })).toBeFocused();
  expect(await axe(page)).toEqual([]);
  await shot(page, 'people');
  // 200 % zoom of a small laptop.
  await page.setViewportSize({ width: 683, height: 384 });
  expect(await page.evaluate(() => document.documentElement.scrollWidth <= innerWidth)).toBe(true);
  await expect(page.getByRole('button', { name: 'Add a person' })).toBeInViewport();
  await shot(page, 'people-200');
  await page.setViewportSize({ width: 1280, height: 720 });

  // Handing over is one key; whoever comes next begins at the caseload.
  await page.keyboard.press('Control+l');
  expect(await axe(page)).toEqual([]);
  await shot(page, 'people-lock');
  await signIn(page, 'QM', ASSISTANT);
  await expect(page.getByText('This passphrase does not open the caseload.')).toBeVisible();
  await signIn(page, 'as', ASSISTANT);
  await expect(page.getByText('Signed in: AS')).toBeVisible();
  await expect(page.getByRole('heading', { level: 1 })).not.toHaveText('People');
  await openClient(page, 'Ines Invented');
  await page.getByLabel('Plan', { exact: true }).fill('Shorter lines.');
  await page.keyboard.press('Tab');
  const waiting = page.getByText('Not co-signed.', { exact: true });
  await expect(waiting).toBeVisible();
  await expect(page.getByText('Recorded by AS (assistant or student).')).toBeVisible();
  expect(await axe(page)).toEqual([]);
  await page.getByRole('button', { name: 'Co-sign this entry' }).click();
  await expect(page.getByText('You recorded this entry, so somebody else has to co-sign it.')).toBeVisible();
  await expect(waiting).toBeVisible();
  // What she changes on the home program waits by itself, and its pages say so.
  await tab(page, 'Program');
  await page.getByRole('button', { name: 'Add a line' }).click();
  await page
    .getByRole('dialog')
    .getByRole('button', { name: /^Add [A-Z]/ })
    .first()
    .click();
  await page.keyboard.press('Escape');
  await expect(waiting).toBeVisible();
  expect(await axe(page)).toEqual([]);
  await shot(page, 'people-draft');
  await page.getByRole('button', { name: 'Co-sign this draft' }).click();
  await expect(page.getByText('You recorded this entry, so somebody else has to co-sign it.')).toBeVisible();
  await people(page);
  await expect(page.getByText('Only a therapist adds or removes people.')).toBeVisible();
  await expect(page.getByRole('button', { name: 'Add a person' })).toBeHidden();
  await shot(page, 'people-assistant');

  await page.keyboard.press('Control+l');
  await signIn(page, 'QM', HERS);
  await expect(page.getByText('Signed in: QM')).toBeVisible();
  await openClient(page, 'Ines Invented');
  await page.getByRole('button', { name: 'Co-sign this entry' }).click();
  await expect(page.getByText(/Co-signed by QM, /)).toBeVisible();
  await tab(page, 'Pages');
  await page.getByRole('radio', { name: /^Home program/ }).click();
  await expect(page.getByText('Prepared by AS (assistant or student), not co-signed.').first()).toBeVisible();
  await shot(page, 'people-draft-page');
  await page.keyboard.press('Alt+0');
  await expect(page.getByRole('row', { name: /Home program.*not co-signed/ })).toBeVisible();
  await shot(page, 'people-draft-due');
  await page.getByRole('button', { name: /^Co-sign: Ines Invented/ }).click();
  await page.getByRole('button', { name: 'Co-sign this draft' }).click();
  await expect(page.getByText(/Co-signed by QM, /)).toBeVisible();
  await expect(page.getByRole('button', { name: 'Co-sign this draft' })).toBeHidden();

  // The first therapist ends the sign-in of the second: nothing else is lost.
  await page.keyboard.press('Control+l');
  await signIn(page, 'MK', PASSPHRASE);
  await expect(page.getByText('Signed in: MK')).toBeVisible();
  await people(page);
  await page.getByRole('button', { name: 'QM', exact: true }).click();
  await page.getByRole('button', { name: 'Remove QM' }).click();
  await field(page, 'Your own passphrase').fill(HERS);
  await page.getByRole('button', { name: 'End the sign-in' }).click();
  await expect(page.getByRole('dialog').getByText('This passphrase does not open the caseload.')).toBeVisible();
  await field(page, 'Your own passphrase').fill(PASSPHRASE);
  expect(await axe(page)).toEqual([]);
  await page.getByRole('button', { name: 'End the sign-in' }).click();
  // The file has another key, and she is where she was.
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('People', { timeout: 30_000 });
  await expect(row('QM')).toContainText('removed on');
  await page.getByRole('button', { name: 'QM', exact: true }).click();
  await expect(page.getByRole('button', { name: 'Remove QM' })).toBeHidden();
  await shot(page, 'people-removed');

  await page.keyboard.press('Control+l');
  await signIn(page, 'QM', HERS);
  await expect(page.getByText('This passphrase does not open the caseload.')).toBeVisible();
  await signIn(page, 'MK', PASSPHRASE);
  await openClient(page, 'Ines Invented');
  await showPart(page, 'What changed');
  for (const initials of ['MK', 'AS', 'QM']) {
    await expect(page.getByRole('cell', { name: initials, exact: true }).first()).toBeVisible();
  }
  await expect(page.getByText(/home program changed: .*co-signature/i).first()).toBeVisible();
  await shot(page, 'people-trail');
  expect(existsSync(`${app.dataFolder}/caseload.db.ready`)).toBe(false);
});
