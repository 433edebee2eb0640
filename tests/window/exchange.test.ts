/** Export for another record system, by keyboard in the real window: the saved files hold what the caseload holds. */
import { Fhir } from 'fhir';
import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { expect, PASSPHRASE, test } from './app.ts';
import { axe, call, idOf, openTab, RIGHTS, seedClient } from './seeds/progress-seed.ts';

test('the record file and the measures leave the window as valid files and stand in the trail', async ({ app }) => {
  await seedClient(app);
  await openTab(app, 'Pages');
  const { page } = app;
  await page.getByText('Export for the record system').focus();
  await page.keyboard.press('Enter');
  await expect(page.getByRole('checkbox', { name: 'With the client’s name' })).toBeChecked();
  await expect(page.getByRole('checkbox', { name: 'With notes and the client’s own words' })).not.toBeChecked();
  expect(await axe(page)).toEqual([]);
  await page.getByRole('button', { name: 'Save the FHIR file' }).focus();
  await page.keyboard.press('Enter');
  await expect(page.getByText('The file is not encrypted')).toBeVisible();
  await page.getByRole('button', { name: 'All clients’ measures' }).click();
  await expect.poll(() => readdirSync(app.saveFolder).length).toBe(2);
  await page.getByRole('button', { name: 'What the columns mean' }).click();
  await expect.poll(() => readdirSync(app.saveFolder).length).toBe(3);

  const read = (ending: string) => {
    const name = readdirSync(app.saveFolder).find((file) => file.endsWith(ending))!;
    return readFileSync(path.join(app.saveFolder, name), 'utf8');
  };
  const bundle = JSON.parse(read('.fhir.json')) as { entry: { resource: { valueQuantity?: { value: number } } }[] };
  expect(new Fhir().validate(bundle, { errorOnUnexpected: true }).valid).toBe(true);
  const percents = bundle.entry.flatMap(({ resource }) => resource.valueQuantity?.value ?? []);
  for (const right of RIGHTS) expect(percents).toContain(Number(((right / 24) * 100).toPrecision(6)));
  expect(read('.csv')).toContain('C-01');
  expect(read('.csv')).not.toContain('Ines');
  const trail = (await call(app, 'trail.list', { clientId: idOf('client') })) as { summary: string }[];
  expect(trail.slice(0, 2).map((entry) => entry.summary)).toEqual([
    'exported: measures as CSV',
    'exported: FHIR file for another record system',
  ]);
});

test('a referral of another record system fills in a new client; nothing is kept before it is added', async ({
  app,
}) => {
  const { page } = app;
  await app.ask('app.create', { passphrase: PASSPHRASE, initials: 'QM', clinic: '' });
  await page.reload();
  await page.getByRole('button', { name: 'Add a client' }).first().click();
  const dialog = page.getByRole('dialog', { name: 'Add a client' });
  const give = (file: unknown) =>
    dialog.getByLabel('Record file of another system').setInputFiles({
      name: 'referral.json',
      mimeType: 'application/fhir+json',
      buffer: Buffer.from(JSON.stringify(file)),
    });
  await give({ resourceType: 'Bundle', type: 'collection' });
  await expect(dialog.getByRole('alert')).toContainText('names no client');
  const subject = { reference: 'Patient/p' };
  const resources = [
    { resourceType: 'Patient', name: [{ text: 'Perpetua Quillfeather' }], birthDate: '1961' },
    { resourceType: 'Condition', code: { text: 'Weakness of the right arm after a stroke' }, subject },
    { resourceType: 'Goal', lifecycleStatus: 'proposed', description: { text: 'Write a shopping list' }, subject },
    { resourceType: 'Immunization', status: 'completed', vaccineCode: { text: 'x' }, patient: subject },
  ];
  await give({ resourceType: 'Bundle', type: 'collection', entry: resources.map((resource) => ({ resource })) });
  await expect(dialog.getByRole('alert')).toHaveCount(0);
  await expect(dialog.getByLabel('Name')).toHaveValue('Perpetua Quillfeather');
  await expect(dialog.getByRole('status')).toContainText('born in 1961');
  await expect(dialog.getByRole('status')).toContainText('Not taken over: 1 Immunization');
  if (process.env['SHOTS']) await page.screenshot({ path: `${process.env['SHOTS']}/referral.png` });
  expect(await axe(page)).toEqual([]);
  expect(await app.ask('caseload.list', {})).toEqual([]);
  await dialog.getByRole('button', { name: 'Add and open' }).click();
  await expect(page.getByRole('banner')).toContainText('Perpetua Quillfeather');
  const [listed] = (await app.ask('caseload.list', {})) as { id: string }[];
  const { client } = (await app.ask('client.open', { clientId: listed!.id })) as { client: Record<string, unknown> };
  expect(client).toMatchObject({
    birthYear: 1961,
    diagnoses: [{ kind: null, text: 'Weakness of the right arm after a stroke', onset: null, side: 'right' }],
    note: 'Goals given:\n- Write a shopping list',
  });
});
