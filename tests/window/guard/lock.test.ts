/** Locking and damage as she meets them in the window. */
import {
  cpSync,
  existsSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  statSync,
  truncateSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { createCaseload } from '../../../db/index.ts';
import { expect, launchApp, openClient, PASSPHRASE, test, type LaunchedApp } from '../app.ts';
import { newClient } from '../../../renderer/logic/caseload/new-client.ts';

const ID = '6f0f6f86-9a3b-4b6e-8a53-6b1f0f3d1c88';
const NAME = 'Lockhart Invented';

async function withClient(app: LaunchedApp): Promise<void> {
  await app.ask('app.create', { passphrase: PASSPHRASE, initials: 'QM', clinic: '' });
  await app.ask('client.save', newClient(ID, NAME, 'L-1'));
  await app.page.reload();
}

test('ten idle minutes lock the window: nothing of a client is left in it; a key pressed keeps it open', async () => {
  test.skip(Boolean(process.env['FAIRHAND_TEST_SHELL']), 'the clock of a running Electron cannot be set');
  let now = new Date('2026-03-04T09:00:00Z');
  const app = await launchApp({ now: () => now });
  const { page } = app;
  try {
    await withClient(app);
    await openClient(page, NAME);
    await expect(page.getByRole('banner')).toContainText(NAME);
    const minutes = (n: number) => (now = new Date(now.getTime() + n * 60_000));
    minutes(9);
    // The window tells at most every five seconds that somebody is there.
    await page.waitForTimeout(6000);
    await page.keyboard.press('Shift');
    // The shell has heard of it, or the next look would lock.
    await page.waitForTimeout(1000);
    minutes(9);
    await page.waitForTimeout(16_000);
    await expect(page.getByRole('banner')).toContainText(NAME);
    await page.keyboard.press('Control+k');
    await expect(page.getByRole('listbox', { name: 'Found' })).toBeVisible();
    await page.waitForTimeout(1000);
    minutes(11);
    await expect(page.getByRole('heading', { name: 'Unlock the caseload' })).toBeVisible();
    expect(await page.content()).not.toContain('Lockhart');
    expect(await page.content()).not.toContain('L-1');
    await expect(page.getByRole('dialog')).toHaveCount(0);
    await expect(app.ask('client.open', { clientId: ID })).rejects.toThrow('locked');
    await page.getByLabel('Passphrase', { exact: true }).fill(PASSPHRASE);
    await page.keyboard.press('Enter');
    await expect(page.getByText(NAME).first()).toBeVisible();
  } finally {
    await app.close();
  }
});

test('a damaged file: the newest backup is offered with what it holds, also from elsewhere, and nothing is deleted', async ({
  app,
}) => {
  const { page } = app;
  await withClient(app);
  await app.ask('backup.now');
  await app.ask('app.lock');
  const stick = path.join(app.dataFolder, '../stick');
  renameSync(path.join(app.dataFolder, 'backups'), stick);
  const file = path.join(app.dataFolder, 'caseload.db');
  writeFileSync(file, 'text over the file');
  await page.reload();
  await page.getByLabel('Passphrase', { exact: true }).fill(PASSPHRASE);
  await page.keyboard.press('Enter');
  const dialog = page.getByRole('dialog', { name: 'Restore a backup' });
  await expect(dialog.getByText('The caseload file is damaged.')).toBeVisible();
  await expect(dialog.getByText(/^There is no backup in this folder/)).toBeVisible();
  await dialog.getByLabel(/^Or its/).fill(stick);
  await dialog.getByRole('button', { name: 'Take it from there' }).click();
  await expect(dialog.getByRole('row').nth(1)).toContainText('newest that opens');
  await expect(dialog.getByRole('row').nth(1)).toContainText('1');
  if (process.env['SHOTS']) await page.screenshot({ path: `${process.env['SHOTS']}/damaged.png` });
  await dialog.getByRole('button', { name: 'Restore this one' }).click();
  await expect(page.getByText(/^Restored\. What was there before is kept as/)).toBeVisible();
  const aside = path.join(app.dataFolder, 'set-aside');
  expect(readFileSync(path.join(aside, readdirSync(aside)[0]!, 'caseload.db'), 'utf8')).toBe('text over the file');
  await page.getByLabel('Passphrase', { exact: true }).fill(PASSPHRASE);
  await page.keyboard.press('Enter');
  await expect(page.getByText(NAME).first()).toBeVisible();
});

test('settings say why this computer cannot unlock from a browser window; a backup can be stopped', async ({ app }) => {
  test.skip(Boolean(process.env['FAIRHAND_TEST_SHELL']), 'this is about the browser shell');
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
  await expect(page.getByText(/Stopped as you asked|Backup made and read back/)).toBeVisible();
  if (process.env['SHOTS']) await page.screenshot({ path: `${process.env['SHOTS']}/backup.png`, fullPage: true });
});

test('a lost passphrase: the sheet’s key opens once, a new passphrase and a new sheet follow', async ({ app }) => {
  test.setTimeout(200_000);
  const { page } = app;
  const made = (await app.ask('app.create', { passphrase: PASSPHRASE, initials: 'QM', clinic: '' })) as {
    recoveryKey: string;
  };
  await app.ask('app.lock');
  const next = 'seven kettles under snow';
  const recover = async (key: string, again = next) => {
    await page.getByRole('button', { name: 'Passphrase lost …' }).click();
    await page.getByLabel('Recovery key').fill(key.replaceAll('-', ' ').toLowerCase());
    await page.getByLabel('New passphrase', { exact: false }).first().fill(next);
    await page.getByLabel('New passphrase again').fill(again);
    await page.getByRole('button', { name: 'Open the caseload' }).click();
  };
  await page.reload();
  await recover(made.recoveryKey, 'seven kettles under ice');
  await expect(page.getByText('The two passphrases differ.')).toBeVisible();
  await page.getByRole('button', { name: 'Back', exact: true }).click();
  await recover(made.recoveryKey);
  await expect(page.getByRole('heading', { name: 'Recovery sheet' })).toBeVisible();
  await expect(page.getByText('the recovery key you typed is used up')).toBeVisible();
  if (process.env['SHOTS']) await page.screenshot({ path: `${process.env['SHOTS']}/recovered.png`, fullPage: true });
  expect(await page.content()).not.toContain(made.recoveryKey.slice(0, 9));
  await page.getByRole('button', { name: 'I have kept it. Open the caseload' }).click();
  await expect(page.getByText('No clients yet')).toBeVisible();
  await app.ask('app.lock');
  await expect(page.getByRole('heading', { name: 'Unlock the caseload' })).toBeVisible();
  await recover(made.recoveryKey);
  await expect(page.getByText('This recovery key does not open the caseload.')).toBeVisible();
  if (process.env['SHOTS']) await page.screenshot({ path: `${process.env['SHOTS']}/used-up.png`, fullPage: true });
  await page.getByRole('button', { name: 'Back', exact: true }).click();
  await page.getByLabel('Passphrase', { exact: true }).fill(next);
  await page.keyboard.press('Enter');
  await expect(page.getByText('No clients yet')).toBeVisible();
});

test('a new recovery sheet or passphrase gives the file a new key and locks; the sheet stays until it is kept', async ({
  app,
}) => {
  const { page } = app;
  await withClient(app);
  const next = 'nine lighthouses and a spoon';
  const kept = page.getByRole('button', { name: 'I have kept it. Unlock again' });
  const changes = [
    async () => {
      await page.getByLabel('Passphrase in use').fill(PASSPHRASE);
      await page.getByRole('button', { name: 'New recovery sheet' }).click();
      return PASSPHRASE;
    },
    async () => {
      await expect(page.getByText('Backups, copies and set-aside files made before still open')).toBeVisible();
      await page.getByLabel('Current passphrase').fill(PASSPHRASE);
      await page.getByLabel(/^New passphrase(?! again)/).fill(next);
      await page.getByLabel(/^New passphrase again/).fill(next);
      await page.getByRole('button', { name: 'Change the passphrase' }).click();
      return next;
    },
  ];
  for (const change of changes) {
    await page.getByRole('button', { name: 'Settings', exact: true }).click();
    const passphrase = await change();
    await expect(kept).toBeVisible();
    // Not for a moment only: the lock that comes with it has been told by now.
    await page.waitForTimeout(1500);
    await expect(page.getByRole('heading', { name: 'Recovery sheet' })).toBeVisible();
    await kept.click();
    await page.getByLabel('Passphrase', { exact: true }).fill(passphrase);
    await page.keyboard.press('Enter');
    // Back where the lock came: on Settings.
    await expect(page.getByRole('heading', { level: 1, name: 'Settings' })).toBeVisible();
  }
});

test('all clients leave as open files, said to be unencrypted; after erasing, the file that holds the client is named', async ({
  app,
}) => {
  const { page } = app;
  await withClient(app);
  await page.getByRole('button', { name: 'Backup', exact: true }).click();
  await page.getByRole('button', { name: 'Export all clients …' }).click();
  const dialog = page.getByRole('dialog', { name: 'Export all clients?' });
  await expect(dialog).toContainText('not encrypted');
  if (process.env['SHOTS']) await page.screenshot({ path: `${process.env['SHOTS']}/export-all.png` });
  await dialog.getByRole('button', { name: 'Export without encryption' }).click();
  await expect(page.getByText(/^1 client written to/)).toBeVisible();
  const exported = path.join(app.dataFolder, 'exports');
  const folder = path.join(exported, readdirSync(exported)[0]!);
  expect(readdirSync(folder)).toHaveLength(1);
  expect(readFileSync(path.join(folder, readdirSync(folder)[0]!), 'utf8')).toContain(NAME);
  const { stillIn } = (await app.ask('client.erase', { clientId: ID })) as { stillIn: string[] };
  expect(stillIn).toEqual([path.join(folder, readdirSync(folder)[0]!)]);
});

for (const [what, spoil] of [
  ['half a file', (file: string) => truncateSync(file, statSync(file).size / 2)],
  ['an empty file', (file: string) => truncateSync(file, 0)],
  [
    'a smashed page',
    (file: string) => {
      const bytes = readFileSync(file);
      bytes.fill(0xa5, 4096 * 3, 4096 * 4);
      writeFileSync(file, bytes);
    },
  ],
] as const)
  test(`${what}: damage is told apart from a wrong passphrase, and a backup is offered`, async ({ app }) => {
    const { page } = app;
    await withClient(app);
    await app.ask('backup.now');
    await app.ask('app.lock');
    const file = path.join(app.dataFolder, 'caseload.db');
    spoil(file);
    const spoiled = readFileSync(file);
    await page.reload();
    await page.getByLabel('Passphrase', { exact: true }).fill(PASSPHRASE);
    await page.keyboard.press('Enter');
    const dialog = page.getByRole('dialog', { name: 'Restore a backup' });
    await expect(dialog.getByText('The caseload file is damaged.')).toBeVisible();
    await expect(dialog.getByRole('row').nth(1)).toContainText('newest that opens');
    if (process.env['SHOTS'])
      await page.screenshot({ path: `${process.env['SHOTS']}/${what.replaceAll(' ', '-')}.png` });
    expect(readFileSync(file).equals(spoiled)).toBe(true);
  });

test('a log that was taken away is told as soon as the caseload opens', async () => {
  const [made, robbed] = [0, 1].map(() => mkdtempSync(path.join(tmpdir(), 'fairhand-robbed-'))) as [string, string];
  const created = await createCaseload({ folder: made, passphrase: PASSPHRASE, now: '2026-03-04T09:00:00Z' });
  if (!created.ok) throw new Error(created.code);
  created.caseload.putSetting('secondPlace', '', { at: '2026-03-04T09:00:00Z', by: 'QM' });
  cpSync(made, robbed, { recursive: true });
  created.caseload.close();
  rmSync(path.join(robbed, 'caseload.db-wal'));
  const app = await launchApp({ dataFolder: robbed });
  try {
    await app.page.getByLabel('Passphrase', { exact: true }).fill(PASSPHRASE);
    await app.page.keyboard.press('Enter');
    await expect(app.page.getByText('The log beside the caseload file was gone')).toBeVisible();
    if (process.env['SHOTS']) await app.page.screenshot({ path: `${process.env['SHOTS']}/lost-log.png` });
  } finally {
    await app.close();
    for (const folder of [made, robbed]) rmSync(folder, { recursive: true, force: true });
  }
});
