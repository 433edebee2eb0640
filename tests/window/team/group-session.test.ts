/** A session that two clients share: a visit for each, and neither record knows the other. */
import { expect, test } from '../app.ts';
import { axe, call, seedClient, seedOther } from '../seeds/progress-seed.ts';

test('two clients are chosen by keyboard, and each record has a visit of its own', async ({ app }) => {
  await seedClient(app);
  await seedOther(app);
  const { page } = app;
  await page.reload();
  await page.getByRole('button', { name: 'Group session', exact: true }).click();
  const dialog = page.getByRole('dialog', { name: 'Group session' });
  const boxes = dialog.getByRole('checkbox');
  const begin = dialog.getByRole('button', { name: 'Begin the group session' });
  await expect(begin).toBeDisabled();
  await boxes.nth(0).focus();
  await page.keyboard.press('Space');
  await page.keyboard.press('Tab');
  await page.keyboard.press('Space');
  await expect(dialog.getByText('2 chosen.')).toBeVisible();
  expect(await axe(page)).toEqual([]);
  if (process.env['SHOTS']) await page.screenshot({ path: `${process.env['SHOTS']}/group-session.png` });
  await begin.click();
  await expect(dialog).toBeHidden();
  const list = (await call(app, 'caseload.list', {})) as { id: string; name: string; code: string }[];
  expect(list.length).toBe(2);
  for (const { id } of list) {
    const record = (await call(app, 'client.open', { clientId: id })) as { visits: { groupOf?: number }[] };
    expect(record.visits.filter((visit) => visit.groupOf === 2).length).toBe(1);
    for (const other of list.filter((one) => one.id !== id))
      for (const word of [other.name, other.id]) expect(JSON.stringify(record)).not.toContain(word);
  }
});
