/** Nothing of a client reaches a file in the clear while the window is open: not the browser's, not a temporary one. */
import { rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { search } from '../../../build/torture/leaks/search.ts';
import { profileFolder } from '../../../electron/window-profile.ts';
import { openClient, openTab } from '../../../electron/browser/walk.ts';
import { expect, PASSPHRASE, test } from '../app.ts';

/** Words that no other file on the machine holds. */
const CANARIES = ['Zanzibella Quorndale', 'Q-CANARY-77', 'canarylily note text'];

/** Files under a folder that hold one of these, each with the folder's name left off. */
const holders = (folder: string, words: readonly string[], since: number): string[] =>
  search([folder], words, since).holders.map((file) => path.relative(folder, file));

test.skip(Boolean(process.env['FAIRHAND_TEST_SHELL']), 'this is about the browser shell');

test('names, codes, notes and the passphrase stay in the encrypted caseload', async ({ app }) => {
  const began = Date.now() - 1000;
  const { page } = app;
  await page.getByLabel(/^Your initials/).fill('QM');
  await page.getByLabel(/^Passphrase(?! again)/).fill(PASSPHRASE);
  await page.getByLabel(/^Passphrase again/).fill(PASSPHRASE);
  await page.getByRole('button', { name: 'Create the caseload' }).click();
  await page.getByRole('button', { name: /^I have kept it/ }).click();
  await page.getByRole('button', { name: /^Add a client/ }).click();
  const dialog = page.getByRole('dialog');
  await dialog.getByLabel(/^Name/).fill(CANARIES[0]!);
  await dialog.getByLabel(/^Code/).fill(CANARIES[1]!);
  await dialog.getByRole('button', { name: 'Add and open' }).click();
  await expect(page.getByRole('banner').getByText(new RegExp(CANARIES[0]!))).toBeVisible();
  await page.getByRole('button', { name: 'Start a visit today' }).click();
  await page.keyboard.press('Alt+7');
  await page.getByLabel('What the client told').fill(CANARIES[2]!);
  await page.keyboard.press('Tab');
  await expect(page.getByRole('contentinfo').getByText(/^Saved/)).toBeVisible();
  await page.keyboard.press('Alt+6');
  await page.getByRole('button', { name: 'Save as PDF' }).click();
  await expect(page.getByText('The PDF was saved.')).toBeVisible();
  // The title says code and screen, never the name.
  expect(await page.title()).toMatch(/, Pages - Fairhand$/);
  expect(await page.title()).not.toContain(CANARIES[0]!);
  expect(page.url()).not.toMatch(/Zanz|CANARY/i);
  // Chromium writes some of its own files a few seconds late.
  await page.waitForTimeout(6000);

  const words = [...CANARIES, PASSPHRASE];
  expect(holders(app.dataFolder, words, 0)).toEqual([]);
  // The search itself works: a planted word is found beside the browser's files.
  const planted = path.join(profileFolder(app.dataFolder), 'planted.bin');
  writeFileSync(planted, Buffer.from(`before ${CANARIES[0]} after`, 'utf16le'));
  expect(holders(app.dataFolder, words, 0)).toEqual([path.relative(app.dataFolder, planted)]);
  rmSync(planted);
  const elsewhere = holders(tmpdir(), words, began).filter(
    (name) => !path.join(tmpdir(), name).startsWith(app.saveFolder) && !/playwright|vitest|\.log$/.test(name),
  );
  expect(elsewhere).toEqual([]);
});

test('after a walk through the demo no name of it lies in the clear anywhere, nor in what was said to the terminal', async ({
  demoApp: app,
}) => {
  const began = Date.now() - 1000;
  const said: string[] = [];
  app.page.on('console', (message) => said.push(message.text()));
  const clients = (await app.ask('caseload.list')) as { name: string; code: string }[];
  expect(clients.length).toBeGreaterThan(4);
  for (const { code } of clients) {
    await openClient(app.page, code);
    for (const tab of ['Screen', 'Sample', 'Program', 'Progress', 'Pages']) {
      await openTab(app.page, tab);
    }
    await app.page.keyboard.press('Alt+0');
  }
  // A request that fails inside says the kind of its error, nothing of the client.
  const failed = await app.call(JSON.stringify({ name: 'client.save', input: { name: clients[0]!.name, code: 7 } }));
  expect(failed).not.toContain(clients[0]!.name);
  await app.ask('backup.now');
  await app.page.waitForTimeout(6000);
  const words = clients.map(({ name }) => name);
  expect(holders(app.dataFolder, words, 0)).toEqual([]);
  const elsewhere = holders(tmpdir(), words, began).filter(
    (name) =>
      !path.join(tmpdir(), name).startsWith(app.saveFolder) &&
      !/playwright|vitest|\.log$|^wt\/|^fairhand-(window|test)-/.test(name),
  );
  expect(elsewhere).toEqual([]);
  for (const { name } of clients) expect(said.join('\n')).not.toContain(name);
});
