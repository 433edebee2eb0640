/** Two laptops of one clinic in the real window: keys, the shared folder, what both sides changed, one person twice. */
import AxeBuilder from '@axe-core/playwright';
import { mkdirSync, readdirSync, readFileSync, renameSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { expect, PASSPHRASE, test } from '../app.ts';
import { createCaseload, type Caseload } from '../../../db/index.ts';
import { colleagueKey, ownKeys } from '../../../electron/files/handover/keys.ts';
import { readHandover, writeHandover } from '../../../electron/files/handover/handover-file.ts';
import { handoverName } from '../../../electron/files/handover/share.ts';
import { client, visit } from '../../db/plain-facts.ts';

const at = (minute: string, by: string) => ({ at: `2026-03-04T10:${minute}:00.000Z`, by });

async function colleague(folder: string): Promise<{ caseload: Caseload; id: string; visitId: string }> {
  mkdirSync(folder);
  const made = await createCaseload({ folder, passphrase: PASSPHRASE, now: '2026-03-04T09:00:00.000Z', workFactor: 4 });
  if (!made.ok) throw new Error(made.code);
  const { caseload } = made;
  const { id } = caseload.put('client', client({ name: 'Ada Invented', code: 'K1' }), at('00', 'JB'));
  const { id: visitId } = caseload.put('visit', visit(id), at('01', 'JB'));
  return { caseload, id, visitId };
}

test('clients go to a colleague and come back through the shared folder; both sides stay in sight', async ({ app }) => {
  const { page } = app;
  await app.ask('app.create', { passphrase: PASSPHRASE, initials: 'MK', clinic: 'Invented Clinic' });
  await app.ask('client.save', client({ name: 'Ada  invented', code: 'K1' }));
  await page.reload();
  const her = await colleague(path.join(app.saveFolder, '..', 'colleague'));
  const share = path.join(app.saveFolder, '..', 'share');
  mkdirSync(share);
  const { identity, recipient } = await ownKeys(her.caseload, at('02', 'JB'));

  await page.getByRole('navigation', { name: 'Places' }).getByRole('button', { name: 'Hand over' }).click();
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Hand over');
  const own = colleagueKey(await page.getByLabel('Your key', { exact: true }).inputValue(), recipient);
  await page.getByLabel('Name or initials').fill('JB');
  await page.getByLabel('Their key').fill('not a key');
  await page.getByRole('button', { name: 'Add this colleague' }).click();
  await expect(page.getByText('This is not a key for hand-overs.')).toBeVisible();
  await page.getByLabel('Their key').fill(recipient);
  await page.getByRole('button', { name: 'Add this colleague' }).click();
  await expect(page.getByText('JB, short key')).toBeVisible();
  const folder = page.getByLabel('Folder on the clinic’s share');
  await folder.fill(share);
  await folder.press('Enter');
  await expect(page.getByText('The folder is looked into.')).toBeVisible();

  const from = { initials: 'JB', clinic: 'Invented Clinic', recipient };
  const write = async (minute: string) => {
    const name = handoverName(own, '2026-03-04');
    writeFileSync(path.join(share, name), await writeHandover(her.caseload, [her.id], own, from, at(minute, 'JB')));
  };
  // A share that goes away half way is told once, on any screen, and so is its return; nothing has to be done.
  const place = (name: string) =>
    page.getByRole('navigation', { name: 'Places' }).getByRole('button', { name }).click();
  renameSync(share, `${share}-away`);
  await place('Backup');
  await expect(page.getByText('The shared folder for hand-overs is not there now.')).toBeVisible();
  await page.getByRole('status').getByRole('button', { name: 'Close' }).click();
  renameSync(`${share}-away`, share);
  await write('05');
  await page.keyboard.press('Alt+0');
  // Found by itself and shown as waiting; nothing is taken in before somebody has looked.
  await expect(page.getByText('A hand-over for you waits in the shared folder.')).toBeVisible();
  await expect(page.getByText('The shared folder for hand-overs is there again.')).toBeVisible();
  expect(((await app.ask('caseload.list')) as { code: string }[]).map(({ code }) => code)).toEqual(['K1']);
  await page.getByRole('button', { name: 'Go to Hand over' }).click();
  await page.getByRole('button', { name: 'Look into it' }).click();
  await expect(page.getByText('Code K1 belongs to another client here: K1-2 instead.')).toBeVisible();
  await expect(page.getByText('May be the same person as K1')).toBeVisible();
  await page.getByRole('button', { name: 'Take in 1 client' }).click();
  await expect(page.getByText('New codes here: K1-2.')).toBeVisible();
  await expect(page.getByRole('heading', { name: 'Perhaps one person entered twice' })).toBeVisible();

  // Both write on the same visit; hers comes later by the clock and stands.
  await app.ask('visit.save', visit(her.id, { id: her.visitId, told: 'said at the table' }));
  her.caseload.put('visit', visit(her.id, { id: her.visitId, told: 'said at the door' }), {
    at: '2099-03-04T11:00:00.000Z',
    by: 'JB',
  });
  await write('30');
  await page.getByRole('navigation', { name: 'Places' }).getByRole('button', { name: 'Backup' }).click();
  await page.getByRole('navigation', { name: 'Places' }).getByRole('button', { name: 'Hand over' }).click();
  await page.getByRole('button', { name: 'Look into it' }).click();
  await page.getByRole('button', { name: 'Take in 1 client' }).click();
  await expect(page.getByRole('cell', { name: 'said at the table' })).toBeVisible();
  await page.screenshot({ path: '.cache/handover.png' });
  const { violations } = await new AxeBuilder({ page }).setLegacyMode().analyze();
  expect(violations.map(({ id }) => id)).toEqual([]);
  await page.getByRole('button', { name: 'Take the other side' }).click();
  await expect(page.getByText('Noted in the history of the client.')).toBeVisible();

  await page.getByRole('checkbox', { name: 'K1-2 · Ada Invented' }).check();
  await page.getByRole('button', { name: 'Put into the shared folder' }).click();
  await expect(page.getByText('1 client handed over in')).toBeVisible();
  const tag = handoverName(recipient, 'x').slice(2, 14);
  const name = readdirSync(share).find((each) => each.includes(tag) && each.endsWith('.age'))!;
  const read = await readHandover(readFileSync(path.join(share, name)), identity, her.caseload.schemaVersion);
  her.caseload.handover.takeIn(read.handed, read.bytesOf, at('40', 'JB'));
  const record = her.caseload.record(her.id);
  expect([record.client.code, record.visits[0]?.told]).toEqual(['K1-2', 'said at the table']);

  await page.getByRole('button', { name: 'Join … K1-2 into K1' }).click();
  await page.getByRole('button', { name: 'Join the two records' }).click();
  await expect(page.getByRole('heading', { name: 'Perhaps one person entered twice' })).toBeHidden();
  her.caseload.close();
});
