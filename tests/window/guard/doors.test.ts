/** What a therapist sees where a small door stood open: a guessable passphrase, a visit in the year 1700. */
import { messages } from '../../../electron/contract/messages.ts';
import { expect, openClient, PASSPHRASE, test } from '../app.ts';

const CLIENT = '6f0f6f86-9a3b-4b6e-8a53-6b1f0f3d1c01';

test('a guessable passphrase and an impossible day are sentences on the screen, and nothing is changed', async ({
  app,
}) => {
  const { page, ask } = app;
  await page.getByLabel(/^Your initials/).fill('QM');
  for (const guessable of ['aaaaaaaaaaaa', 'passwordpassword']) {
    await page.getByLabel(/^Passphrase(?! again)/).fill(guessable);
    await page.getByLabel(/^Passphrase again/).fill(guessable);
    await page.getByRole('button', { name: 'Create the caseload' }).click();
    await expect(page.getByText(messages['passphrase-too-weak'])).toBeVisible();
    expect(await ask('app.status')).toMatchObject({ state: 'first-start' });
  }
  await ask('app.create', { passphrase: PASSPHRASE, initials: 'QM', clinic: '' });
  const lists = { diagnoses: [], precautions: [], medicines: [] };
  const texts = { referrer: '', readers: '', wants: '', interests: '', callName: '', callNumber: '', note: '' };
  const rest = { language: 'en', largePrint: '14', familyConsent: false, familyConsentOn: null, archivedOn: null };
  const hands = { birthYear: null, handBefore: null, handNow: null };
  await ask('client.save', { id: CLIENT, code: 'T-1', name: 'Typed Invented', ...hands, ...lists, ...texts, ...rest });
  await page.reload();
  await openClient(page, 'Typed Invented');
  await page.getByRole('button', { name: 'Start a visit today' }).click();
  await page.keyboard.press('Alt+7');
  const days = async () => {
    const { visits } = (await ask('client.open', { clientId: CLIENT })) as { visits: { date: string }[] };
    return visits.map(({ date }) => date);
  };
  const before = await days();
  expect(before).toHaveLength(1);
  for (const day of ['1700-05-04', '0001-01-01']) {
    await page.getByLabel('Date', { exact: true }).fill(day);
    await page.keyboard.press('Tab');
    await expect(page.getByText(messages['date-too-old']).first()).toBeVisible();
    expect(await days()).toEqual(before);
  }
});
