/** The intake screen in the real window, by keyboard alone: flags, items, set-up, findings, a stop and its referral page. */
import AxeBuilder from '@axe-core/playwright';
import type { Page } from '@playwright/test';
import { expect, launchApp, PASSPHRASE, test, type LaunchedApp } from './app.ts';
import { newClient } from '../../renderer/logic/caseload/new-client.ts';

async function call(app: LaunchedApp, name: string, input: unknown): Promise<void> {
  const answer = JSON.parse(await app.call(JSON.stringify({ name, input }))) as { ok: boolean };
  expect(answer, name).toMatchObject({ ok: true });
}

/** A caseload with one client and one visit, opened at the intake screen. */
async function openIntake(app: LaunchedApp): Promise<Page> {
  const { page } = app;
  const clientId = '6f0f6f86-9a3b-4b6e-8a53-6b1f0f3d1c01';
  const visitId = '6f0f6f86-9a3b-4b6e-8a53-6b1f0f3d1c02';
  await call(app, 'app.create', { passphrase: PASSPHRASE, initials: 'AB', clinic: 'Harbor House Clinic' });
  await call(app, 'client.save', {
    ...newClient(clientId, 'Ines Invented', 'C-01'),
    birthYear: 1957,
    handBefore: 'right',
    handNow: 'right',
    referrer: 'Dr. Invented',
    familyConsent: true,
  });
  const date = new Date().toISOString().slice(0, 10);
  await call(app, 'visit.save', {
    id: visitId,
    clientId,
    date,
    kind: 'first',
    minutes: null,
    nextVisit: '',
    told: '',
    skilled: '',
    response: '',
    taughtBack: '',
    plan: '',
  });
  await page.reload();
  await showIntake(page);
  return page;
}

async function showIntake(page: Page): Promise<void> {
  await page.getByLabel('Find', { exact: true }).fill('Ines');
  await page.keyboard.press('Enter');
  await page.getByRole('banner').getByText('Ines Invented').waitFor();
  await page.keyboard.press('Alt+1');
  await page.getByRole('navigation', { name: 'Intake' }).waitFor();
}

async function noToEverything(page: Page): Promise<void> {
  const left = page.getByText(/\d+ to ask\. A question/);
  while (await left.count()) {
    const before = await left.innerText();
    // Pressed again where a slow machine had not moved on to the next group yet: "no to the rest" changes no answer twice.
    await expect(async () => {
      await page.keyboard.press('g');
      // Emergencies and self-harm have one answer each.
      if ((await page.getByText(before).count()) > 0) await page.keyboard.press('n');
      await expect(page.getByText(before)).toHaveCount(0, { timeout: 2000 });
    }).toPass();
  }
}

const item = (page: Page, title: string) => page.getByRole('heading', { level: 2, name: title, exact: true });

async function axe(page: Page, what: string): Promise<void> {
  for (const theme of ['light', 'dark']) {
    await page.evaluate((name) => {
      document.documentElement.dataset.theme = name;
    }, theme);
    // The shell closes any second page, and axe's usual way opens one.
    const found = await new AxeBuilder({ page })
      .setLegacyMode()
      .withTags(['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'])
      .analyze();
    expect(found.violations.map((v) => `${what}, ${theme}: ${v.id} ${v.nodes[0]?.html ?? ''}`)).toEqual([]);
  }
  await page.evaluate(() => {
    document.documentElement.dataset.theme = 'light';
  });
}

/** Nothing of the page lies beyond the right edge. */
const sideways = (page: Page) =>
  page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);

test('a screen by keyboard alone: flags, items, a reason, a detail; stopped in the middle and resumed', async ({
  app,
}) => {
  const page = await openIntake(app);
  await expect(page.getByText('19 to ask.')).toBeVisible();
  await axe(page, 'red flags');
  await page.keyboard.press('n');
  await expect(page.getByText('18 to ask.')).toBeVisible();
  await expect(page.locator('#step-intake')).toHaveText('18 flags to ask');
  await noToEverything(page);
  await expect(page.getByText('All asked at this visit.')).toBeVisible();
  await page.getByRole('button', { name: 'Go on to hand and body' }).press('Enter');

  await expect(item(page, 'Hand for writing')).toBeVisible();
  await axe(page, 'item');
  await page.keyboard.press('2');
  // Which hand writes was said at the referral: it is not asked again.
  await expect(item(page, 'Skin and swelling')).toBeVisible();
  await page.keyboard.press('3');
  await expect(item(page, 'Pain in hand or thumb')).toBeVisible();
  await page.keyboard.press('n');
  await expect(page.getByRole('heading', { name: 'Why was it not tested?' })).toBeVisible();
  await page.keyboard.press('1');
  await expect(item(page, 'Tone in wrist, fingers, elbow')).toBeVisible();
  await page.keyboard.press('ArrowLeft');
  await expect(item(page, 'Pain in hand or thumb')).toBeVisible();
  await expect(page.getByText('Reason: No time today')).toBeVisible();
  await page.keyboard.press('ArrowRight');
  await page.keyboard.press('x');
  await expect(item(page, 'Touch at the finger pads')).toBeVisible();

  // A window that starts anew comes back to where it was.
  await page.waitForTimeout(2500);
  await page.reload();
  await expect(item(page, 'Touch at the finger pads')).toBeVisible();
});

test('a pain rating of 6 stops with what to do, and a recorded review lets the work go on', async ({ app }) => {
  const page = await openIntake(app);
  await noToEverything(page);
  await page.getByRole('button', { name: 'Go on to hand and body' }).press('Enter');
  await page.keyboard.press('ArrowRight');
  await page.keyboard.press('ArrowRight');
  await expect(item(page, 'Pain in hand or thumb')).toBeVisible();
  await page
    .getByRole('radiogroup', { name: 'Pain now, 0 to 10: before' })
    .getByRole('radio', { name: '6', exact: true })
    .press('Enter');
  await expect(page.getByRole('alert').filter({ hasText: 'No exercises until this is reviewed' })).toBeFocused();
  await axe(page, 'stop');
  await page.getByRole('button', { name: 'Show the referral page' }).press('Enter');
  await expect(page.getByRole('heading', { name: 'Pain of 5 or more, or rising' })).toBeVisible();
  await axe(page, 'referral');
  await page.getByRole('button', { name: /^Red flags/ }).press('Enter');
  await page.getByRole('button', { name: 'Known and medically reviewed' }).press('Enter');
  await page.getByLabel('Reviewed by').fill('Dr. Invented, hand clinic');
  await page.keyboard.press('Enter');
  await expect(page.getByRole('heading', { name: 'Who reviewed it?' })).toHaveCount(0);
  await expect(page.getByText('No exercises until this is reviewed')).toHaveCount(0);
});

test('the set-up is worked out as it is typed, in both units, and an impossible height is refused', async ({ app }) => {
  const page = await openIntake(app);
  await page.getByRole('button', { name: /^Seat and table/ }).press('Enter');
  for (const [label, value] of [
    ['Knee height', '388'],
    ['Sole', '25'],
    ['Elbow rest height', '232'],
    ['Thigh', '168'],
    ['Table (mm)', '735'],
  ] as const) {
    await page.getByLabel(label).fill(value);
    await page.keyboard.press('Tab');
  }
  await expect(
    page.getByRole('img', { name: 'Side view to scale: seat 453 mm, table 735 mm, footrest 40 mm.' }),
  ).toBeVisible();
  await axe(page, 'set-up');
  await page.getByLabel('Knee height').fill('3900');
  await page.keyboard.press('Tab');
  await expect(page.getByRole('alert').filter({ hasText: 'It was not saved; measure again.' })).toBeVisible();
  await page.getByRole('radio', { name: 'inches' }).press('Enter');
  await expect(page.getByRole('img', { name: /seat 17 7\/8 in/ })).toBeVisible();
  await page.getByRole('button', { name: /^Writing block/ }).press('Enter');
  await page
    .getByRole('radiogroup', { name: 'Tiredness, 0 to 10' })
    .first()
    .getByRole('radio', { name: '2', exact: true })
    .press('Enter');
  await page
    .getByRole('radiogroup', { name: 'Tiredness, 0 to 10' })
    .last()
    .getByRole('radio', { name: '4', exact: true })
    .press('Enter');
  await expect(page.getByText('Tiring in five minutes of writing: 2 of 3.')).toBeVisible();
  // The clock runs on while another step is looked at.
  await page.getByRole('button', { name: 'Start the writing block' }).press('Enter');
  await page.getByRole('button', { name: 'Go on: Findings' }).press('Enter');
  await page.getByRole('button', { name: /^Writing block\s*running/ }).press('Enter');
  await page.getByRole('button', { name: 'Stop', exact: true }).press('Enter');
  await expect(page.getByRole('button', { name: 'Start the writing block' })).toBeVisible();
  await axe(page, 'writing block');
  await page.getByRole('button', { name: 'Go on: Findings' }).press('Enter');
  await expect(page.getByText('The table is too high for this client.')).toBeVisible();
  await axe(page, 'findings');
});

test('at 200 % zoom of a small laptop nothing lies beyond the edge', async () => {
  const app = await launchApp({ size: { width: 640, height: 400 } });
  try {
    const page = await openIntake(app);
    await page.setViewportSize({ width: 640, height: 360 });
    expect(await sideways(page)).toBeLessThanOrEqual(0);
    for (const name of [/^Hand and body/, /^Seat and table/, /^Findings/]) {
      await page.getByRole('button', { name }).press('Enter');
      expect(await sideways(page)).toBeLessThanOrEqual(0);
    }
  } finally {
    await app.close();
  }
});
