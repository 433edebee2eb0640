/** Goals in the real window: built from the last samples, rated at the visit, revised with their history. */
import { expect, test } from './app.ts';
import { axe, call, openTab, seedClient, seedPair } from './seeds/progress-seed.ts';

test('a goal is built, rated and revised by keyboard', async ({ app }) => {
  await seedClient(app);
  await openTab(app, 'Goal');
  const { page } = app;
  await expect(page.getByRole('heading', { name: 'Next reachable step' })).toBeVisible();
  await page.keyboard.press('Alt+g');
  await expect(page.locator('.sentence')).toContainText('Ines Invented will write');
  await expect(page.locator('.sentence')).toContainText('I want to send my son shopping');
  await page.getByLabel('On what paper').fill('plain paper');
  await page.getByLabel('On what paper').press('Tab');
  await expect(page.locator('.sentence')).toContainText('on plain paper');
  await page.getByRole('button', { name: 'Done' }).focus();
  await page.keyboard.press('Enter');

  const levels = page.getByRole('radiogroup', { name: /Level at the visit/ });
  await levels.getByRole('radio').first().focus();
  await page.keyboard.press('ArrowDown');
  await page.keyboard.press('Enter');
  await expect(levels.getByRole('radio').nth(1)).toHaveAttribute('aria-checked', 'true');
  await expect(page.getByRole('region', { name: 'Goals over visits' })).toContainText('40.0');

  for (let theme = 0; theme < 2; theme++) {
    const found = await axe(page);
    expect(found).toEqual([]);
    await page.keyboard.press('Alt+t');
  }
  await page.getByRole('button', { name: 'Revise: next step' }).click();
  await expect(page.getByText('Goals met, revised or dropped (1)')).toBeVisible();
  await expect(page.getByText('Earlier versions (1)')).toBeVisible();
});

test('the step to take rests on repeat pairs of the whole clinic, as numbers that say nothing of whose', async ({
  app,
}) => {
  await seedClient(app);
  await openTab(app, 'Goal');
  const { page } = app;

  await seedPair(app);
  const answer = (await call(app, 'progress.repeatPairs', {})) as { pairs: Record<string, unknown>[] };
  expect(answer.pairs).toHaveLength(2);
  for (const pair of answer.pairs) expect(Object.keys(pair).sort()).toEqual(['first', 'kind', 'second', 'task']);

  await openTab(app, 'Goal');
  await page.keyboard.press('Alt+g');
  await page.getByRole('button', { name: 'Done' }).click();
  await expect(page.locator('.sentence')).toContainText('Ines Invented will write');
  await page.getByRole('navigation', { name: 'Client' }).getByRole('button', { name: 'Progress', exact: true }).click();
  await page.getByText('The numbers behind this').click();
  await expect(page.getByRole('row', { name: /Smallest change that counts/ })).toContainText(
    'points are called in 8 of 10 clients',
  );
});
