/** Locking and damage as she meets them in the window. */
import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { expect, launchApp, PASSPHRASE, test, type LaunchedApp } from './app.ts';

const ID = '6f0f6f86-9a3b-4b6e-8a53-6b1f0f3d1c88';
const NAME = 'Lockhart Invented';

async function withClient(app: LaunchedApp): Promise<void> {
  await app.ask('app.create', { passphrase: PASSPHRASE, initials: 'QM', clinic: '' });
  const client = { birthYear: null, handBefore: null, handNow: null, diagnoses: [], precautions: [], medicines: [] };
  const texts = { referrer: '', readers: '', wants: '', interests: '', callName: '', callNumber: '', note: '' };
  const rest = { language: 'en', largePrint: '14', familyConsent: false, familyConsentOn: null, archivedOn: null };
  await app.ask('client.save', { id: ID, code: 'L-1', name: NAME, ...client, ...texts, ...rest });
  await app.page.reload();
}

test('ten idle minutes lock the window: nothing of a client is left in it; a key pressed keeps it open', async () => {
  test.skip(Boolean(process.env['FAIRHAND_TEST_SHELL']), 'the clock of a running Electron cannot be set');
  test.setTimeout(150_000);
  let now = new Date('2026-03-04T09:00:00Z');
  const app = await launchApp({ now: () => now });
  const { page } = app;
  try {
    await withClient(app);
    await page.getByText(NAME).click();
    await expect(page.getByRole('heading', { level: 1 })).toContainText(NAME);
    const minutes = (n: number) => (now = new Date(now.getTime() + n * 60_000));
    minutes(9);
    // The window tells at most every five seconds that somebody is there.
    await page.waitForTimeout(6000);
    await page.keyboard.press('Shift');
    // The shell has heard of it, or the next look would lock.
    await page.waitForTimeout(1000);
    minutes(9);
    await page.waitForTimeout(16_000);
    await expect(page.getByRole('heading', { level: 1 })).toContainText(NAME);
    await page.keyboard.press('Control+k');
    await expect(page.getByRole('listbox', { name: 'Found' })).toBeVisible();
    await page.waitForTimeout(1000);
    minutes(11);
    await expect(page.getByRole('heading', { name: 'Unlock the caseload' })).toBeVisible({ timeout: 30_000 });
    expect(await page.content()).not.toContain('Lockhart');
    expect(await page.content()).not.toContain('L-1');
    await expect(page.getByRole('dialog')).toHaveCount(0);
    await expect(app.ask('client.open', { clientId: ID })).rejects.toThrow('locked');
    await page.getByLabel('Passphrase', { exact: true }).fill(PASSPHRASE);
    await page.keyboard.press('Enter');
    await expect(page.getByText(NAME)).toBeVisible({ timeout: 30_000 });
  } finally {
    await app.close();
  }
});

test('a damaged file: the newest backup is offered with what it holds, and nothing is deleted', async ({ app }) => {
  test.setTimeout(150_000);
  const { page } = app;
  await withClient(app);
  await app.ask('backup.now');
  await app.ask('app.lock');
  const file = path.join(app.dataFolder, 'caseload.db');
  writeFileSync(file, 'text over the file');
  await page.reload();
  await page.getByLabel('Passphrase', { exact: true }).fill(PASSPHRASE);
  await page.keyboard.press('Enter');
  const dialog = page.getByRole('dialog', { name: 'Restore a backup' });
  await expect(dialog.getByText('The caseload file is damaged.')).toBeVisible({ timeout: 30_000 });
  await expect(dialog.getByRole('row').nth(1)).toContainText('newest that opens', { timeout: 30_000 });
  await expect(dialog.getByRole('row').nth(1)).toContainText('1');
  if (process.env['SHOTS']) await page.screenshot({ path: `${process.env['SHOTS']}/damaged.png` });
  await dialog.getByRole('button', { name: 'Restore this one' }).click();
  await expect(page.getByText(/^Restored\. What was there before is kept as/)).toBeVisible({ timeout: 60_000 });
  const aside = path.join(app.dataFolder, 'set-aside');
  expect(readFileSync(path.join(aside, readdirSync(aside)[0]!, 'caseload.db'), 'utf8')).toBe('text over the file');
  await page.getByLabel('Passphrase', { exact: true }).fill(PASSPHRASE);
  await page.keyboard.press('Enter');
  await expect(page.getByText(NAME)).toBeVisible({ timeout: 60_000 });
});

test('settings say why this computer cannot unlock from a browser window; a backup can be stopped', async ({ app }) => {
  test.skip(Boolean(process.env['FAIRHAND_TEST_SHELL']), 'this is about the browser shell');
  test.setTimeout(120_000);
  const { page } = app;
  await withClient(app);
  await page.getByRole('button', { name: 'Settings', exact: true }).click();
  await expect(page.getByText('Not available in a browser window')).toBeVisible();
  await expect(app.ask('app.keepSystemKey', { passphrase: PASSPHRASE })).rejects.toThrow('system-key-unusable');
  expect(existsSync(path.join(app.dataFolder, 'caseload.system-key.json'))).toBe(false);
  if (process.env['SHOTS']) await page.screenshot({ path: `${process.env['SHOTS']}/settings.png`, fullPage: true });
  await page.getByRole('button', { name: 'Backup', exact: true }).click();
  await page.getByRole('button', { name: 'Back up now' }).click();
  const cancel = page.getByRole('button', { name: 'Cancel', exact: true });
  // A caseload of one client may be done before anybody could stop it.
  await Promise.race([cancel.click().catch(() => undefined), page.getByText(/Backup made and read back/).waitFor()]);
  await expect(page.getByText(/Stopped as you asked|Backup made and read back/)).toBeVisible({ timeout: 60_000 });
  if (process.env['SHOTS']) await page.screenshot({ path: `${process.env['SHOTS']}/backup.png`, fullPage: true });
});
