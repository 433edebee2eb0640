/** Words of a form that are no fact yet outlive a `kill -9` of the window, one second after they were typed. */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import type { Page } from '@playwright/test';
import { engine } from '../../../build/torture/leaks/index.ts';
import { expect, launchApp, openClient, PASSPHRASE, test, type LaunchedApp } from '../app.ts';

test.skip(Boolean(process.env['FAIRHAND_TEST_SHELL']), 'the window is a process of the browser shell here');
test.skip(process.platform !== 'linux', 'the window’s process is found in /proc');

const CLIENT = '6f0f6f86-9a3b-4b6e-8a53-6b1f0f3d1c01';
const VISIT = '6f0f6f86-9a3b-4b6e-8a53-6b1f0f3d1c02';

async function create({ ask, page }: LaunchedApp): Promise<void> {
  await ask('app.create', { passphrase: PASSPHRASE, initials: 'AB', clinic: '' });
  const lists = { diagnoses: [], precautions: [], medicines: [] };
  const texts = { referrer: '', readers: '', wants: '', interests: '', callName: '', callNumber: '', note: '' };
  const rest = { language: 'en', largePrint: '14', familyConsent: false, familyConsentOn: null, archivedOn: null };
  const hands = { birthYear: null, handBefore: 'right', handNow: 'right' };
  await ask('client.save', { id: CLIENT, code: 'T-1', name: 'Typed Invented', ...hands, ...lists, ...texts, ...rest });
  const date = new Date().toISOString().slice(0, 10);
  const notes = { nextVisit: '', told: '', skilled: '', response: '', taughtBack: '', plan: '' };
  await ask('visit.save', { id: VISIT, clientId: CLIENT, date, kind: 'first', minutes: null, ...notes });
  await page.reload();
}

/** The same steps lead to the form before and after. */
async function outlivesAKill(open: (page: Page) => Promise<void>, words: Record<string, string>): Promise<void> {
  const folder = mkdtempSync(path.join(tmpdir(), 'fairhand-killed-'));
  const dataFolder = path.join(folder, 'caseload');
  const first = await launchApp({ dataFolder });
  await create(first);
  await openClient(first.page, 'Typed Invented');
  await open(first.page);
  for (const [label, word] of Object.entries(words)) {
    const field = first.page.getByLabel(label);
    await field.focus();
    await first.page.keyboard.press('Control+A');
    await first.page.keyboard.type(word);
  }
  // Half a second of pause, and the save.
  await first.page.waitForTimeout(1000);
  const window = engine(process.pid, 'window');
  expect(window).toHaveLength(1);
  process.kill(window[0]!, 'SIGKILL');
  await expect.poll(() => first.page.isClosed()).toBe(true);
  await first.leave();
  const second = await launchApp({ dataFolder });
  try {
    await second.page.getByLabel('Passphrase', { exact: true }).fill(PASSPHRASE);
    await second.page.keyboard.press('Enter');
    await openClient(second.page, 'Typed Invented');
    await open(second.page);
    for (const [label, word] of Object.entries(words)) await expect(second.page.getByLabel(label)).toHaveValue(word);
  } finally {
    await second.close();
    rmSync(folder, { recursive: true, force: true, maxRetries: 5 });
  }
}

async function toThePain(page: Page): Promise<void> {
  await page.keyboard.press('Alt+1');
  await page
    .getByRole('navigation', { name: 'Intake' })
    .getByRole('button', { name: /^Hand and body/ })
    .click();
  await page.getByRole('button', { name: /^Pain in hand or thumb/ }).click();
  const pain = page.getByRole('heading', { name: 'Pain in hand or thumb' });
  await expect(pain).toBeVisible();
}

test('the review of a stop', async () => {
  await outlivesAKill(
    async (page) => {
      await toThePain(page);
      const rating = page.getByRole('radiogroup', { name: 'Pain now, 0 to 10: before' });
      await rating.getByRole('radio', { name: '6', exact: true }).click();
      await page.getByRole('button', { name: /^Red flags/ }).click();
      await page.getByRole('button', { name: 'Known and medically reviewed' }).click();
    },
    { 'Reviewed by': 'Dr. Invented, hand clinic', 'What was said': 'stable, up to a pain of 3' },
  );
});

test('the therapist’s own reason why an item was not tested', async () => {
  await outlivesAKill(
    async (page) => {
      await toThePain(page);
      await page.keyboard.press('n');
      await page.getByRole('heading', { name: 'Why was it not tested?' }).waitFor();
    },
    { 'Another reason': 'bandage on, not to be taken off' },
  );
});

const toTheSize = (surface: string) => async (page: Page) => {
  await page.keyboard.press('Alt+2');
  await page
    .getByRole('tab', { name: 'Pen' })
    .or(page.getByRole('button', { name: 'Start this sample' }))
    .first()
    .waitFor();
  const start = page.getByRole('button', { name: 'Start this sample' });
  if (await start.isVisible()) await start.click();
  await page.getByRole('tab', { name: 'Pen' }).click();
  await page.getByLabel('Surface').selectOption(surface);
  await page.getByRole('button', { name: /^Set the (true size|size again)/ }).click();
};

test('the size of a tablet as its maker tells it', async () => {
  await outlivesAKill(toTheSize('tablet-paper'), {
    'Name of the device, as you call it': 'the grey tablet',
    'Area across': '216',
    'Area down': '135.5',
  });
});

test('a box half fitted to the screen', async () => {
  await outlivesAKill(toTheSize('screen'), {
    'Name of the device, as you call it': 'the grey laptop',
    'Across, px': '411',
    'Down, px': '259',
  });
});

test('a colleague who is not on the list yet', async () => {
  await outlivesAKill(
    async (page) => {
      const places = page.getByRole('navigation', { name: 'Places' });
      await places.getByRole('button', { name: 'Hand over', exact: true }).click();
      await page.getByRole('heading', { name: 'Colleagues' }).waitFor();
    },
    { 'Name or initials': 'QX', 'Their key': 'age1 as far as it was read out' },
  );
});
