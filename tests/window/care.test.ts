/** Payer counters, tests given elsewhere and late addenda: noted on the client's page, printed on the report. */
import { expect, showPart, test } from './app.ts';
import { axe, call, idOf, openTab, seedClient } from './seeds/progress-seed.ts';

test('intervals are noted by keyboard, counted at once, and stand on the report', async ({ app }) => {
  await seedClient(app);
  await openTab(app, 'Visit and record');
  const { page } = app;
  await showPart(page, 'Whole record');
  const care = page.getByRole('region', { name: 'Care' });
  await expect(care).toContainText('5 visits and 28 days since the start of care.');
  await care.getByText('Payer, intervals, certification').focus();
  await page.keyboard.press('Enter');
  await care.getByLabel('Payer', { exact: true }).focus();
  await page.keyboard.type('Harbor Fund');
  await page.keyboard.press('Tab');
  await care.getByLabel('A report is due after').fill('5');
  await page.keyboard.press('Tab');
  await expect(care.locator('b')).toHaveText(
    '5 visits and 28 days since the start of care; a report is due now.',
  );
  await care.getByText('Tests given elsewhere (0)').click();
  await care.getByRole('button', { name: 'Add a test' }).click();
  await care.getByLabel('Name').fill('Grip strength');
  await page.keyboard.press('Tab');
  await page.keyboard.type('18 kg');
  await page.keyboard.press('Tab');
  await showPart(page, 'This visit');
  await page.getByText('Late addenda (0)').click();
  await page.getByLabel('Add to this note').fill('The client called: the pen is too thick.');
  await page.locator('details', { hasText: 'Late addenda' }).getByRole('button', { name: 'Add', exact: true }).click();
  await expect(page.getByText('AB: The client called: the pen is too thick.')).toBeVisible();
  expect(await axe(page)).toEqual([]);

  const { client } = (await call(app, 'client.open', { clientId: idOf('client') })) as { client: { care: unknown } };
  expect(client.care).toMatchObject({
    payer: 'Harbor Fund',
    reportEveryVisits: 5,
    outsideTests: [{ name: 'Grip strength', score: '18 kg', on: null }],
  });
  await page.getByRole('navigation', { name: 'Client' }).getByRole('button', { name: 'Pages', exact: true }).click();
  await page.getByRole('radio', { name: /Progress report/ }).focus();
  await page.keyboard.press('Space');
  const preview = page.getByRole('region', { name: 'Preview: the page as it prints' });
  await expect(preview).toContainText('Harbor Fund');
  await expect(preview).toContainText('Grip strength: 18 kg');
  await expect(page.getByText('a report is due now').first()).toBeVisible();
});
