/** Progress in the real window: the sentence, the chart, its values by keyboard and as a table. */
import { expect, test } from './app.ts';
import { axe, DAYS, openTab, RIGHTS, seedClient } from './progress-seed.ts';

test('the chart, the table and the sentence say what the caseload holds', async ({ app }) => {
  await seedClient(app);
  await openTab(app, 'Progress');
  const { page } = app;
  await expect(page.locator('.sentence')).toContainText('Five visits: up by about 2 words in 24 a week');
  await expect(page.locator('.sentence')).toContainText('larger than the day-to-day spread of the baseline');
  await expect(
    page.getByText('Not the same: pen (gel pen, then felt pen), medicine (medicine on, then medicine off).').first(),
  ).toBeVisible();

  const chart = page.getByRole('slider', { name: /Chart of words read/ });
  await chart.focus();
  await page.keyboard.press('Home');
  await expect(chart).toHaveAttribute('aria-valuetext', /11 of 24 words, unfamiliar reader; interval 28 to 65 %/);
  await page.keyboard.press('End');
  await page.keyboard.press('ArrowLeft');
  await page.keyboard.press('ArrowLeft');
  await expect(chart).toHaveAttribute('aria-valuetext', /18 of 24 words/);

  await page.getByText('The same as a table').click();
  const rows = page.getByRole('group', { name: 'Table of progress' }).locator('tbody tr');
  await expect(rows).toHaveCount(DAYS.length + 1);
  for (const [i, right] of RIGHTS.entries()) {
    const row = rows.filter({ hasText: i < 3 ? 'Baseline sample' : /^.*Sample/ }).nth(i < 3 ? i : i - 3);
    await expect(row.locator('td').nth(2)).toHaveText(String(right));
    await expect(row.locator('td').nth(4)).toHaveText(String(Math.round((right / 24) * 1000) / 10));
  }
  await page.getByRole('button', { name: 'Save as CSV' }).click();
});

test('the page of progress passes axe in both themes', async ({ app }) => {
  await seedClient(app);
  await openTab(app, 'Progress');
  const { page } = app;
  await expect(page.locator('.sentence')).toBeVisible();
  await page.getByText('The numbers behind this').click();
  await page.getByText('The same as a table').click();
  for (let theme = 0; theme < 2; theme++) {
    const found = await axe(page);
    expect(found).toEqual([]);
    await page.keyboard.press('Alt+t');
  }
});

test('a shorter span says what lies in it', async ({ app }) => {
  await seedClient(app);
  const { page } = app;
  await openTab(app, 'Progress');
  await page.getByLabel('Span').selectOption('30');
  await expect(page.locator('.sentence')).toContainText('Four visits');
});
