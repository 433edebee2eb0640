/** From an empty folder to a client with a visit, by keyboard alone; find, undo, lock, unlock, backup. */
import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import AxeBuilder from '@axe-core/playwright';
import { people } from '../../build/demo/people.ts';
import { expect, launchApp, openClient, PASSPHRASE, showPart, test } from './app.ts';
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

test('records age out by the clinic’s rule, and the rest moves to another laptop by one path', async ({ app }) => {
  test.setTimeout(240_000);
  const { page } = app;
  await app.ask('app.create', { passphrase: PASSPHRASE, initials: 'QM', clinic: '' });
  const [kept, old] = ['6f0f6f86-9a3b-4b6e-8a53-6b1f0f3d1c77', '7f0f6f86-9a3b-4b6e-8a53-6b1f0f3d1c78'];
  await app.ask('client.save', newClient(kept, 'Bea Invented', 'T-1'));
  await app.ask('client.save', newClient(old, 'Otto Invented', 'T-2'));
  const words = { nextVisit: '', told: '', skilled: '', response: '', taughtBack: '', plan: '' };
  const visit = { id: '8f0f6f86-9a3b-4b6e-8a53-6b1f0f3d1c79', clientId: old, date: '2012-03-01', kind: 'treatment' };
  await app.ask('visit.save', { ...visit, minutes: 45, ...words });
  await app.ask('backup.now');
  await page.reload();
  const lists = page.getByRole('navigation', { name: 'Lists' });
  await lists.getByRole('button', { name: 'All clients' }).click();

  // No rule, no list; the rule shows who is due, since when and why.
  await page.getByRole('button', { name: 'How long records are kept' }).click();
  const dialog = page.getByRole('dialog', { name: 'How long records are kept' });
  await expect(dialog.getByText('No rule is set, so no record is due.')).toBeVisible();
  await dialog.getByLabel('Kept for').fill('10');
  await dialog.getByLabel('Kept for').press('Tab');
  await expect(dialog.getByText(/^1 record is older than 10 years after the last visit/)).toBeVisible();
  await expect(dialog.getByRole('row').nth(1)).toContainText(/T-2 · Otto Invented.*last visit/);
  const checked = await new AxeBuilder({ page }).setLegacyMode().include('dialog').analyze();
  expect(checked.violations.map(({ id }) => id)).toEqual([]);
  if (process.env['SHOTS']) await page.screenshot({ path: `${process.env['SHOTS']}/retention.png` });

  // Archived: out of the list, found by typing, back by one click.
  await dialog.getByRole('checkbox', { name: 'Choose T-2' }).press('Space');
  await dialog.getByRole('button', { name: 'Archive', exact: true }).click();
  await expect(dialog.getByText('1 archived: out of the lists, still found by typing.')).toBeVisible();
  await page.keyboard.press('Escape');
  await expect(page.getByRole('row')).toHaveCount(2);
  await lists.getByRole('button', { name: /^Archived/ }).click();
  await page.getByRole('button', { name: 'Take back from the archive' }).click();
  await lists.getByRole('button', { name: 'All clients' }).click();
  await expect(page.getByRole('row')).toHaveCount(3);

  // Erased in two steps: the wrong number is refused, and the backup that still holds the record is named.
  await page.getByRole('button', { name: 'How long records are kept' }).click();
  await dialog.getByRole('checkbox', { name: 'Choose T-2' }).check();
  await dialog.getByRole('button', { name: 'Erase …' }).click();
  await expect(dialog.getByRole('heading', { name: 'Erase this record?' })).toBeFocused();
  await dialog.getByLabel('To erase, type how many there are: 1').fill('2');
  await dialog.getByRole('button', { name: 'Erase for good' }).click();
  await expect(dialog.getByText(/Nothing was erased\. Count them/)).toBeVisible();
  await dialog.getByLabel('To erase, type how many there are: 1').fill('1');
  if (process.env['SHOTS']) await page.screenshot({ path: `${process.env['SHOTS']}/retention-erase.png` });
  await page.keyboard.press('Enter');
  await expect(dialog.getByText(/^1 erased\. Still in: .*\.fhbackup$/)).toBeVisible();
  await page.keyboard.press('Escape');
  await expect(page.getByRole('row')).toHaveCount(2);

  // The old laptop writes everything as one file, with a sheet of what to do, and says from now on that it was moved.
  const stick = mkdtempSync(path.join(tmpdir(), 'fairhand-stick-'));
  await page.getByRole('button', { name: 'Backup', exact: true }).click();
  await page.getByLabel('Folder for the file (a stick)').fill(stick);
  await page.getByRole('button', { name: 'Write the file' }).click();
  const written = page.getByText(/^Written and read back: /);
  await expect(written).toContainText(/ 1 client, last visit none, \d+ entries\./);
  const entries = /(\d+) entries/.exec((await written.textContent())!)![1]!;
  await expect(page.getByRole('alert').filter({ hasText: 'was moved to another laptop' })).toBeVisible();
  if (process.env['SHOTS']) await page.screenshot({ path: `${process.env['SHOTS']}/move-out.png` });
  const files = readdirSync(stick);
  expect(files).toContain('fairhand-what-to-do.txt');
  expect(readFileSync(path.join(stick, 'fairhand-what-to-do.txt'), 'utf8')).toContain('I come from another laptop');
  const file = path.join(
    stick,
    files.find((name) => name.endsWith('.fhbackup'))!,
  );

  // The new laptop is started by a double click on the file; it reads it, checks the trail, and opens without a warning.
  const other = await launchApp({ handed: file });
  await other.page.getByRole('button', { name: 'Take it in' }).click();
  await expect(other.page.getByText(/^The file is here: caseload-/)).toBeVisible();
  await other.page.getByLabel('Passphrase of the old laptop').fill('not this one at all');
  await other.page.keyboard.press('Enter');
  await expect(other.page.getByRole('alert')).toContainText('does not open');
  await other.page.getByLabel('Passphrase of the old laptop').fill(PASSPHRASE);
  await other.page.keyboard.press('Enter');
  await expect(other.page.getByText(/^Everything is here: 1 client, .* The trail is whole: /)).toContainText(
    `${entries} entries`,
  );
  if (process.env['SHOTS']) await other.page.screenshot({ path: `${process.env['SHOTS']}/move-in.png` });
  await other.page.getByRole('button', { name: 'Open the caseload' }).click();
  await other.page.getByRole('navigation', { name: 'Lists' }).getByRole('button', { name: 'All clients' }).click();
  await expect(other.page.getByText('Bea Invented').first()).toBeVisible();
  await expect(other.page.getByRole('alert')).toHaveCount(0);
  expect(await other.ask('retention.state')).toMatchObject({ rule: { years: 10 } });
  await other.close();

  // The old one warns at each opening, and is erased by its passphrase.
  await page.reload();
  await expect(page.getByRole('alert').filter({ hasText: 'was moved to another laptop' })).toBeVisible();
  await page.getByRole('button', { name: 'Backup', exact: true }).click();
  await page.getByRole('button', { name: 'Erase the caseload on this laptop …' }).click();
  await page.getByLabel('Current passphrase').fill(PASSPHRASE);
  await page.getByRole('button', { name: 'Erase for good' }).click();
  await expect(page.getByRole('heading', { name: 'Create your caseload' })).toBeVisible();
  expect(readdirSync(app.dataFolder).filter((name) => /caseload|backups/.test(name))).toEqual([]);
  rmSync(stick, { recursive: true });
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
