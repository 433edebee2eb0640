/** From an empty folder to a client with a visit, by keyboard alone; find, undo, lock, unlock, backup. */
import { people } from '../../build/demo/people.ts';
import { expect, openClient, PASSPHRASE, showPart, test } from './app.ts';
import { newClient } from '../../renderer/logic/caseload/new-client.ts';

test('a therapist creates a caseload, adds a client and starts a visit without a pointer', async ({ app }) => {
  const { page } = app;
  await page.getByLabel('Your initials').focus();
  await page.keyboard.type('QM');
  await page.keyboard.press('Tab');
  await page.keyboard.type('Quillmere Hand Clinic');
  await page.keyboard.press('Tab');
  await page.keyboard.type(PASSPHRASE);
  await page.keyboard.press('Tab');
  await page.keyboard.type(PASSPHRASE);
  await page.keyboard.press('Enter');
  await expect(page.getByRole('heading', { name: 'Recovery sheet' })).toBeVisible();
  await page.getByRole('button', { name: 'I have kept it' }).focus();
  await page.keyboard.press('Enter');
  await expect(page.getByText('No clients yet')).toBeVisible();

  await page.keyboard.press('Alt+n');
  // The first field of a dialog has the focus.
  await expect(page.getByLabel('Name', { exact: false }).first()).toBeFocused();
  await page.keyboard.type('Ada Invented');
  await page.keyboard.press('Enter');
  await expect(page.getByRole('navigation', { name: 'Client' })).toBeVisible();
  await page.getByRole('button', { name: 'Start a visit today' }).focus();
  await page.keyboard.press('Enter');
  await expect(page.getByText(/^Saved \d/)).toBeVisible();
  await expect(page.getByRole('heading', { name: /^Visit of/ })).toBeVisible();

  // A field saves as it is left; undo brings the old text back.
  await showPart(page, 'Whole record');
  const wants = page.getByLabel('What the client wants to write');
  await wants.fill('Shopping lists');
  await page.keyboard.press('Tab');
  await page.keyboard.press('Alt+0');
  await page.getByLabel('Find', { exact: true }).fill('ada');
  await page.keyboard.press('Enter');
  await showPart(page, 'Whole record');
  await expect(wants).toHaveValue('Shopping lists');
  await page.getByRole('button', { name: 'Visit and record', exact: true }).focus();
  await page.keyboard.press('Control+z');
  await expect(wants).toHaveValue('');
  await page.keyboard.press('Control+Shift+z');
  await expect(wants).toHaveValue('Shopping lists');

  // Locked: nothing of a client is on the screen; a wrong passphrase is a sentence.
  await page.keyboard.press('Control+l');
  await expect(page.getByRole('heading', { name: 'Unlock the caseload' })).toBeVisible();
  expect(await page.content()).not.toContain('Invented');
  await page.getByLabel('Passphrase').fill('a wrong passphrase');
  await page.keyboard.press('Enter');
  await expect(page.getByRole('alert')).toContainText('The caseload is unharmed');
  await page.getByLabel('Passphrase').fill(PASSPHRASE);
  await page.keyboard.press('Enter');
  await expect(page.getByText('Ada Invented').first()).toBeVisible();
});

test('typing filters at once, the palette finds clients before commands', async ({ demoApp }) => {
  const { page } = demoApp;
  await page.getByRole('navigation', { name: 'Lists' }).getByRole('button', { name: 'All clients' }).click();
  await page.getByLabel('Find', { exact: true }).fill('ataxia');
  await expect(page.getByRole('row')).toHaveCount(2);
  await page.getByLabel('Find', { exact: true }).fill('');
  await page.keyboard.press('Control+k');
  await page.keyboard.type('mar');
  await expect(page.getByRole('option').first()).toContainText('Margit');
  await page.keyboard.press('Enter');
  await expect(page.getByRole('banner')).toContainText('Margit');
});

test('a backup is made, read back and listed; the trail is whole', async ({ demoApp }) => {
  const { page } = demoApp;
  await page.getByRole('button', { name: 'Backup', exact: true }).click();
  await page.getByRole('button', { name: 'Back up now' }).click();
  await expect(page.getByText(`Backup made and read back: ${people.length} clients`)).toBeVisible();
  await expect(page.getByRole('row').nth(1)).toContainText('yes');
  await page.getByRole('button', { name: 'Check the trail' }).click();
  await expect(page.getByText(/The trail is whole/)).toBeVisible();
});

test('the demo is badged and removed in one step', async ({ demoApp }) => {
  const { page } = demoApp;
  await expect(page.getByText('Demo: invented clients')).toBeVisible();
  await page.getByRole('button', { name: 'Settings' }).click();
  await page.getByRole('button', { name: 'Remove the demo' }).click();
  await page.getByRole('dialog').getByRole('button', { name: 'Remove the demo' }).click();
  await expect(page.getByRole('heading', { name: 'Create your caseload' })).toBeVisible();
});

test('a removed caseload comes back from its backup on the first screen', async ({ app }) => {
  const { page } = app;
  await app.ask('app.create', { passphrase: PASSPHRASE, initials: 'QM', clinic: '' });
  const id = '6f0f6f86-9a3b-4b6e-8a53-6b1f0f3d1c77';
  await app.ask('client.save', newClient(id, 'Bea Invented', 'T-1'));
  await app.ask('backup.now');
  await app.ask('client.erase', { clientId: id });
  await app.ask('app.lock');
  await page.reload();
  await page.getByRole('button', { name: 'Restore a backup' }).click();
  await page.getByLabel('Passphrase of the backup').fill(PASSPHRASE);
  await page.keyboard.press('Enter');
  await page.getByRole('button', { name: 'Restore this one' }).click();
  await expect(page.getByText(/^Restored\. What was there before is kept as/)).toBeVisible();
  await page.getByLabel('Passphrase', { exact: true }).fill(PASSPHRASE);
  await page.keyboard.press('Enter');
  await expect(page.getByText('Bea Invented').first()).toBeVisible();
});

test('a refusal is in sight however far down the screen it happens; another screen begins at its top', async ({
  demoApp,
}) => {
  const { page } = demoApp;
  await openClient(page, 'Edmund Varley');
  await showPart(page, 'Whole record');
  const onset = page.getByLabel('Onset', { exact: true }).first();
  await onset.fill('2091-01-01');
  await onset.press('Tab');
  await expect(page.getByRole('alert')).toContainText('This date lies in the future. Nothing was changed.');
  await expect(page.getByRole('alert')).toBeInViewport();

  await showPart(page, 'What changed');
  await page.getByRole('button', { name: 'Erase this client' }).scrollIntoViewIfNeeded();
  await expect(page.getByRole('alert')).toBeInViewport();
  await page.keyboard.press('Alt+8');
  await expect(page.getByRole('heading', { level: 1, name: 'Progress' })).toBeInViewport();
  await expect(page.getByRole('heading', { level: 1, name: 'Progress' })).toBeFocused();
  expect(await page.evaluate(() => window.scrollY)).toBe(0);
});
