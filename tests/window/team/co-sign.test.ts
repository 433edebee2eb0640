/** An assistant's entry waits in the visit, in Due and on the note until somebody else signs; her own signature is refused. */
import { expect, test } from '../app.ts';
import { axe, call, idOf, openTab, seedClient } from '../seeds/progress-seed.ts';

const therapist = (initials: string, assistant: boolean) => ({
  initials,
  clinic: 'Invented Clinic',
  credentials: '',
  assistant,
});

test('an assistant records, cannot sign or approve, and a therapist co-signs', async ({ app }) => {
  await seedClient(app);
  const { page } = app;
  await call(app, 'app.therapist', therapist('AS', true));
  await page.reload();
  await openTab(app, 'Visit and record');
  await page.getByLabel('Plan', { exact: true }).fill('Shorter lines.');
  await page.keyboard.press('Tab');
  const waiting = page.getByText('Not co-signed.', { exact: true });
  await expect(waiting).toBeVisible();
  await expect(page.getByText('Recorded by AS (assistant or student).')).toBeVisible();
  expect(await axe(page)).toEqual([]);
  await page.getByRole('button', { name: 'Co-sign this entry' }).click();
  await expect(page.getByText('You recorded this entry, so somebody else has to co-sign it.')).toBeVisible();
  await expect(waiting).toBeVisible();
  if (process.env['SHOTS']) await page.screenshot({ path: `${process.env['SHOTS']}/co-sign-waits.png` });

  await call(app, 'app.therapist', therapist('QM', false));
  await page.reload();
  await openTab(app, 'Visit and record');
  await page.getByRole('button', { name: 'Co-sign this entry' }).click();
  await expect(page.getByText(/Co-signed by QM, /)).toBeVisible();
  await expect(page.getByRole('button', { name: 'Co-sign this entry' })).toBeHidden();
  const { visits } = (await call(app, 'client.open', { clientId: idOf('client') })) as {
    visits: { coSign?: object }[];
  };
  expect(visits.at(-1)?.coSign).toMatchObject({ recordedBy: 'AS', signedBy: 'QM' });
});
