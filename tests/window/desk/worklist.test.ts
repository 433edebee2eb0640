/** What is due, as the first screen: walked by keyboard, each row leads to where it is done. */
import { expect, test } from '../app.ts';

test('the day begins with what is due; arrows choose, Enter goes where it is done', async ({ demoApp }) => {
  const { page } = demoApp;
  await expect(page.getByRole('heading', { level: 1, name: 'Due' })).toBeVisible();
  const table = page.getByRole('table', { name: 'What is due' });
  // The demo has an open red flag, visits planned for its day, notes, a report and what runs out.
  for (const group of ['Red flags', 'Visits today', 'Reports and notes', 'Ends or runs out', 'No visit planned'])
    await expect(table.getByRole('rowheader', { name: new RegExp(`^${group} \\d`) })).toBeVisible();
  const detail = page.getByRole('region', { name: 'The chosen client' });
  await expect(detail).toContainText('Percival Hollis');
  // One tab stop for the whole list; the detail follows the selection and the focus stays.
  const first = table.getByRole('button', { name: /^Review: Percival Hollis/ });
  await first.focus();
  await page.keyboard.press('ArrowDown');
  await expect(table.getByRole('button', { name: /^Start: / }).first()).toBeFocused();
  await expect(detail.getByRole('heading', { level: 2 })).not.toContainText('Percival');
  await page.keyboard.press('End');
  await expect(table.getByRole('button', { name: /^Plan: / }).last()).toBeFocused();
  await page.keyboard.press('Home');
  await expect(first).toBeFocused();
  await page.keyboard.press('Enter');
  await expect(page.getByRole('heading', { level: 1, name: 'Screen' })).toBeFocused();
  await expect(page).toHaveTitle('Q-106, Screen - Fairhand');
});

test('a part of what is due is a list of its own, and what renews opens the record', async ({ demoApp }) => {
  const { page } = demoApp;
  const lists = page.getByRole('navigation', { name: 'Lists' });
  await lists.getByRole('button', { name: 'Ends or runs out' }).click();
  const table = page.getByRole('table', { name: 'What is due' });
  await expect(table.getByRole('rowheader', { name: /^Ends or runs out/ })).toBeVisible();
  await expect(table.getByRole('rowheader', { name: /^Visits today/ })).toHaveCount(0);
  await table.getByRole('button', { name: /^Renew: Edmund Varley/ }).click();
  await expect(page.getByRole('button', { name: 'Whole record' })).toHaveAttribute('aria-pressed', 'true');
  await page.keyboard.press('Alt+0');
  await expect(page.getByRole('heading', { level: 1, name: 'Ends or runs out' })).toBeVisible();
});
