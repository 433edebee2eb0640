/** Export for another record system, by keyboard in the real window: the saved files hold what the caseload holds. */
import { Fhir } from 'fhir';
import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { expect, test } from './app.ts';
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
