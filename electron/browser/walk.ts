/** Steps in the real window as a therapist takes them, by the words on the screen. */
import type { Locator, Page } from 'playwright-core';

/** Longest wait for one step, in milliseconds. */
const PATIENCE = 30_000;

/** Opens a client by code, on whatever screen of the caseload the window is. */
export async function openClient(page: Page, code: string): Promise<void> {
  // Keys find nobody before the first screen is there.
  await page.getByRole('button', { name: /^Find/ }).first().waitFor({ timeout: PATIENCE });
  await page.keyboard.press('Control+k');
  await page.getByRole('combobox', { name: 'Name, code or command' }).fill(code, { timeout: PATIENCE });
  await page.getByRole('option', { name: code }).first().waitFor({ timeout: PATIENCE });
  await page.keyboard.press('Enter');
  // In a narrow window the steps lie folded in the strip.
  const steps = page.getByRole('navigation', { name: 'Client', includeHidden: true });
  await steps.waitFor({ state: 'attached', timeout: PATIENCE });
}

/** Waits until the screen has nothing more to load and its fonts are there. */
export async function still(page: Page): Promise<void> {
  await page.waitForLoadState('networkidle', { timeout: PATIENCE });
  await page.evaluate(() => document.fonts.ready.then(() => undefined));
}

/** Goes to a screen of the open client by the name on its tab. */
export async function openTab(page: Page, name: string): Promise<void> {
  const tabs = page.getByRole('navigation', { name: 'Client' });
  await tabs.getByRole('button', { name, exact: true }).click({ timeout: PATIENCE });
}

/** Chooses a page of the open client by the name on its button and saves it; the shell's port takes the bytes. */
export async function savePage(page: Page, kind: string): Promise<void> {
  await openTab(page, 'Pages');
  await page.getByRole('radio', { name: new RegExp(`^${kind}`) }).click({ timeout: PATIENCE });
  await still(page);
  await page.getByRole('button', { name: 'Save as PDF' }).click({ timeout: PATIENCE });
  await page.getByRole('status').filter({ hasText: 'The PDF was saved.' }).waitFor({ timeout: PATIENCE });
}

/** Prints the family page of a client. */
export async function printSummary(page: Page, code: string): Promise<void> {
  await openClient(page, code);
  await savePage(page, 'Family summary');
}

/** Sets the true size of the screen by a card of 85.60 x 53.98 mm (ISO/IEC 7810, ID-1), twice, as the screen asks. */
export async function fitCard(place: Page | Locator, card: { across: string; down: string }): Promise<void> {
  for (const name of ['It fits', 'It fits again']) {
    await place.getByLabel('Across, px').fill(card.across, { timeout: PATIENCE });
    await place.getByLabel('Down, px').fill(card.down);
    await place.getByRole('button', { name, exact: true }).click();
  }
}
