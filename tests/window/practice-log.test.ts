/** The practice log that came back on paper, typed in by keyboard alone in the real window. */
import { texts } from '../../renderer/logic/texts/en.ts';
import { expect, showPart, test } from './app.ts';
import { axe, call, idOf, openTab, seedClient } from './seeds/progress-seed.ts';

test('two days are typed in without a mouse; slips get a sentence; the progress page draws them', async ({ app }) => {
  await seedClient(app);
  await openTab(app, 'Program');
  const { page } = app;
  await page.getByRole('button', { name: 'Practice log' }).click();
  const log = page.getByRole('region', { name: 'Practice log' });
  await expect(log).toBeVisible();
  const type = async (...cells: string[]) => {
    for (const cell of cells) {
      await page.keyboard.press('Tab');
      await page.keyboard.type(cell);
    }
  };
  // A whole log is typed in the order of its printed columns, so that nobody looks for the place of a number.
  await log.getByText('Type a whole log').click();
  const [, , ...numbers] = texts.log.head;
  const order = ['day', ...numbers.slice(0, -1), texts.log.circles.felt.split(/ +/).join('/')].join(', ').toLowerCase();
  await expect(log.getByLabel(`One day a line: ${order}`)).toBeVisible();
  await log.getByText('Type a whole log').click();
  const day = log.getByLabel('Day', { exact: true });
  const first = new Date(Date.now() - 6 * 86_400_000).toISOString().slice(0, 10);
  await day.fill(first);
  await log.getByLabel('Minutes', { exact: true }).focus();
  await page.keyboard.type('15');
  await type('8', '3', '5', '0', '2', 'ruled, 8 mm', 'wide pen', 'a good day');
  await page.keyboard.press('Enter');
  await expect(log.getByRole('status')).toContainText('is saved');
  await expect(day).toBeFocused();
  // The next day is there already, paper and grip carried over.
  await expect(day).toHaveValue(new Date(Date.parse(first) + 86_400_000).toISOString().slice(0, 10));
  await expect(log.getByLabel('Grip', { exact: true })).toHaveValue('wide pen');
  await log.getByLabel('Pain', { exact: true }).focus();
  await page.keyboard.type('12');
  await page.keyboard.press('Tab');
  await expect(log.getByRole('alert')).toContainText('from 0 to 10');
  await log.getByLabel('Pain', { exact: true }).fill('2');
  await page.keyboard.press('Tab');
  await log.getByLabel('Minutes', { exact: true }).fill('10');
  await page.keyboard.press('Enter');
  await expect(log.locator('tbody tr', { hasText: 'wide pen' })).toHaveCount(2);
  expect(await axe(page)).toEqual([]);

  const { practiceLogs } = (await call(app, 'client.open', { clientId: idOf('client') })) as {
    practiceLogs: Record<string, unknown>[];
  };
  expect(practiceLogs.find((one) => one['date'] === first)).toMatchObject({
    minutes: 15,
    lines: 8,
    fatigueBefore: 3,
    fatigueAfter: 5,
    pain: 0,
    breaks: 2,
    paper: 'ruled, 8 mm',
    grip: 'wide pen',
    note: 'a good day',
  });
  await page.getByRole('navigation', { name: 'Client' }).getByRole('button', { name: 'Progress', exact: true }).click();
  await showPart(page, /^Table/);
  await expect(
    page.getByRole('group', { name: 'Table of progress' }).locator('tr', { hasText: 'Home practice' }),
  ).toHaveCount(3);
});
