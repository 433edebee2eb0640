/**
 * The part of the demo visit that happens now: a new visit for an invented client, a page measured, a line read
 * blind, a program drafted from it and approved.
 */
import type { Page } from 'playwright-core';
import type { DemoSteps } from './demo-steps.ts';
import { fitCard, openTab } from './walk.ts';

/** Longest wait for a page to be measured, in milliseconds. */
const MEASURING = 60_000;

/** A card on a screen of 96 dots an inch. */
const CARD_PX = { across: '324', down: '204' };

/** Sections of the intake screen, by the words on their buttons. */
const intakeSections = [
  [/^Red flags/, 'intake-red-flags'],
  [/^Seat and table/, 'intake-seat-and-table'],
  [/^Findings/, 'intake-findings'],
] as const;

export async function liveVisit(visit: DemoSteps): Promise<void> {
  const { page } = visit;
  let picture = '';
  let written = '';
  await visit.step('The written page of the last visit', async () => {
    await openTab(page, 'Sample');
    picture = await writtenPage(page);
    await page.getByRole('tab', { name: 'Text' }).click();
    written = await page.getByLabel('Text as the client meant it').inputValue();
  });
  for (const [name, file] of intakeSections) {
    await visit.step(`Intake section ${file}`, async () => {
      await openTab(page, 'Screen');
      await page.getByRole('navigation', { name: 'Intake' }).getByRole('button', { name }).click();
      await visit.picture(file);
    });
  }
  await visit.step('Today: a visit is started', async () => {
    await page.getByRole('button', { name: 'Start a visit today' }).click();
    await visit.picture('visit-today');
  });
  await visit.step('Today: a written page is added and measured', async () => {
    await openTab(page, 'Sample');
    await page.getByRole('button', { name: 'Start this sample' }).click();
    // What the page says is typed over what was proposed.
    await page.getByRole('tab', { name: 'Text' }).click();
    await page.getByLabel('Text as the client meant it').fill(written);
    await page.keyboard.press('Tab');
    await dropPage(page, picture);
    await page.getByRole('heading', { name: /^\d+ lines?, \d+ words?/ }).waitFor({ timeout: MEASURING });
    await visit.picture('sample-today');
  });
  await visit.step('Today: a line is read blind', async () => {
    await openTab(page, 'Read back');
    // Somebody new: whoever has read this text before is not offered it again.
    await page.getByLabel('Reader’s initials', { exact: true }).fill('OH');
    await page.getByRole('button', { name: /^Start reading/ }).click();
    const size = page.getByRole('dialog', { name: 'True size of this screen' });
    await size.waitFor();
    await visit.picture('screen-size');
    await fitCard(size, CARD_PX);
    await page.getByRole('dialog', { name: 'Blind reading' }).waitFor();
    await visit.picture('blind-reading');
    await page.getByLabel('Type what you read').fill(written.split('\n')[0] ?? '');
    await page.keyboard.press('Enter');
    await page.keyboard.press('Escape');
    await page.getByRole('dialog', { name: 'Blind reading' }).waitFor({ state: 'hidden' });
  });
  await visit.step('Today: a program is drafted and approved', async () => {
    await openTab(page, 'Program');
    await visit.picture('program-draft');
    await page.getByRole('button', { name: /^Approve/ }).click();
    await page.getByText(/It is frozen/).waitFor();
    await visit.picture('program-approved');
  });
}

/** The address of the picture of the sample that the screen shows. */
async function writtenPage(page: Page): Promise<string> {
  const shown = page.locator('main [src^="/blob/"], main [href^="/blob/"]').first();
  await shown.waitFor({ state: 'attached' });
  return shown.evaluate((node) => node.getAttribute('src') ?? node.getAttribute('href') ?? '');
}

/** Gives a picture to the screen as a therapist's drop of a file does. */
async function dropPage(page: Page, address: string): Promise<void> {
  await page.getByRole('group', { name: 'Add a page' }).evaluate(async (place, from) => {
    const picture = await (await fetch(from)).blob();
    const files = new DataTransfer();
    files.items.add(new File([picture], 'scan.png', { type: 'image/png' }));
    place.dispatchEvent(new DragEvent('drop', { dataTransfer: files, bubbles: true, cancelable: true }));
  }, address);
}

/** What lies over every screen: the palette, the sheet of keys, the other themes. The demo locks into the first start. */
export async function overEveryScreen(visit: DemoSteps): Promise<void> {
  const { page } = visit;
  const keyed = async (key: string, file: string, away: string | null) => {
    await visit.step(`Key ${key}`, async () => {
      await page.keyboard.press(key);
      await visit.picture(file);
      if (away) await page.keyboard.press(away);
    });
  };
  await keyed('Control+k', 'palette', 'Escape');
  await keyed('F1', 'keys', 'Escape');
  await keyed('Alt+t', 'theme-dark', null);
  await keyed('Alt+t', 'theme-contrast', 'Alt+t');
}
